/** The dates of an appliance, each with how precise it is and how we know; deadlines and cover count from them. */
import { Button, Stack } from '@mantine/core';
import { useState } from 'react';
import { dateKindsConfused } from '../../domain/judgement/mistakes/dateKindsConfused.ts';
import { type DateQuestion, dateQuestions } from '../../domain/judgement/mistakes/dateQuestions.ts';
import { COVER_DATES, type CoverDate, type SheetCover } from '../../domain/procedure/modelSheet.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { impreciseDayWords, readImpreciseDay } from '../form/impreciseDay.ts';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { COVER_DATE_HINTS, COVER_DATE_WORDS } from '../kit/coverDates.ts';
import { dayWords } from '../kit/dayWords.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { keyOf, optionsOf } from '../kit/tradeWords.ts';
import { useAppStatus, useHasRole } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { DateQuestionNote, KindsQuestionNote } from './DateQuestionNote.tsx';

type Dates = OutputOf<'appliances.get'>['dates'];

export function DatesPanel({
  applianceId,
  sheetId,
  siteId,
  dates,
}: {
  readonly applianceId: string;
  /** null: general practice, which states no cover. */
  readonly sheetId: string | null;
  readonly siteId: string | null;
  readonly dates: Dates;
}) {
  const site = useOperation('sites.get', { siteId: siteId ?? '' }, { isWanted: siteId !== null });
  const isNewBuild = site.state === 'ready' && site.value.site.buildingKind === 'new-build';
  const sheet = useOperation('sheets.get', { sheetId: sheetId ?? '' }, { isWanted: sheetId !== null });
  const cover = sheet.state === 'ready' ? sheet.value.cover : null;
  const { today } = useAppStatus();
  /** The date that is being set; null: none. */
  const [adding, setAdding] = useState<CoverDate | null>(null);
  const missing = COVER_DATES.find((kind) => !dates.some((date) => date.kind === kind)) ?? 'installed';
  const mayEdit = useHasRole('dispatcher', 'owner', 'technician');
  const unclear = dateKindsConfused({ cover, dates, isNewBuild, today }).filter(
    // Before its startup a boiler has no such day, and the visit sets it: asked only once it should long have been started.
    ({ why, kinds, lastDays }) =>
      why !== 'rule-date-missing' || !kinds.includes('started') || lastDays.some(({ dueOn }) => dueOn < today),
  );
  return (
    <Panel
      title="Dates"
      action={
        mayEdit && adding === null ? (
          <Button variant="default" onClick={() => setAdding(missing)}>
            Set a date
          </Button>
        ) : undefined
      }
    >
      <Stack>
        {adding === null ? (
          unclear.map((question) => (
            <KindsQuestionNote key={question.why} question={question} onSet={mayEdit ? setAdding : null} />
          ))
        ) : (
          <DateForm
            key={adding}
            applianceId={applianceId}
            first={adding}
            cover={cover}
            dates={dates}
            isNewBuild={isNewBuild}
            onDone={() => setAdding(null)}
          />
        )}
        {dates.length === 0 ? (
          <EmptyState title="No date known yet">
            Made, sold, installed, started up, moved in: registration windows and cover count from different ones.
          </EmptyState>
        ) : (
          <PlainTable
            caption="Dates of this appliance"
            rows={COVER_DATES.flatMap((kind) => dates.filter((date) => date.kind === kind))}
            keyOf={(date) => date.kind}
            columns={[
              { label: 'What', cell: ({ kind }) => COVER_DATE_WORDS[kind] },
              { label: 'When', cell: (date) => impreciseDayWords(date) },
              { label: 'How we know', cell: ({ source }) => source },
            ]}
          />
        )}
      </Stack>
    </Panel>
  );
}

function DateForm({
  applianceId,
  first,
  cover,
  dates,
  isNewBuild,
  onDone,
}: {
  readonly applianceId: string;
  /** Which date is offered first. */
  readonly first: CoverDate;
  readonly cover: SheetCover | null;
  readonly dates: Dates;
  readonly isNewBuild: boolean;
  readonly onDone: () => void;
}) {
  const form = useDraftForm({
    draftKey: `date.${applianceId}.${first}`,
    operation: 'appliances.setDate',
    inputRoot: 'date',
    initial: { kind: first as string, on: '', source: '' },
    toInput: (values, reader) => {
      const read = readImpreciseDay(values.on);
      if (!read.ok) reader.fail('on', read.why);
      return {
        applianceId,
        date: {
          kind: keyOf(COVER_DATE_WORDS, values.kind) ?? 'installed',
          on: read.ok ? read.date.on : '',
          precision: read.ok ? read.date.precision : 'day',
          source: values.source,
        },
      };
    },
    onDone,
  });
  const read = readImpreciseDay(form.values.on);
  const kind = keyOf(COVER_DATE_WORDS, form.values.kind) ?? 'installed';
  const { today } = useAppStatus();
  const typed = read.ok ? [{ kind, ...read.date }] : [];
  const questions = dateQuestions({
    cover,
    dates: [...dates.filter((date) => date.kind !== kind), ...typed],
    registeredOn: null,
    isNewBuild,
    today,
  }).filter((question) => isAbout(question, kind));
  return (
    <DraftFormFrame form={form} submitLabel="Set" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <div className="lo-fields">
        <SelectField
          form={form}
          name="kind"
          label="What"
          description={COVER_DATE_HINTS[kind]}
          options={optionsOf(COVER_DATE_WORDS)}
        />
        <TextField
          form={form}
          name="on"
          label="When"
          description={read.ok ? `= ${impreciseDayWords(read.date)}` : 'A month or a year will do.'}
          placeholder="4 Jul 2026, Jul 2026 or 2026"
          isNeeded
        />
        <TextField form={form} name="source" label="How we know" placeholder="plate, invoice, told by …" isNeeded />
      </div>
      {typed.length === 0
        ? null
        : questions.map((question) => (
            <DateQuestionNote
              key={JSON.stringify(question)}
              question={question}
              kind={kind}
              onTake={(on) => form.set({ on: dayWords(on) })}
            />
          ))}
    </DraftFormFrame>
  );
}

function isAbout(question: DateQuestion, kind: CoverDate): boolean {
  return 'kinds' in question
    ? question.kinds.includes(kind)
    : question.earlier === kind || question.later === kind || question.later === 'today';
}
