/** Days off, illness, courses of one person, and days on which the whole firm is closed. */
import { Button, Stack } from '@mantine/core';
import { useState } from 'react';
import type { AbsenceRow } from '../../electron/contract/workforce.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { readSpan, spanWords } from '../form/readSpan.ts';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { DateText } from '../kit/DateText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { LedTo } from '../kit/LedTo.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { useAct } from '../operations/useAct.ts';

export function AbsencesPanel({
  staffId,
  absences,
  mayEdit,
}: {
  /** null: days on which nobody works. */
  readonly staffId: string | null;
  readonly absences: readonly AbsenceRow[];
  readonly mayEdit: boolean;
}) {
  const [isAdding, setIsAdding] = useState(false);
  const [wasAdding, setWasAdding] = useState(false);
  const leave = () => {
    setIsAdding(false);
    setWasAdding(true);
  };
  const add = (
    <Button variant="default" onClick={() => setIsAdding(true)}>
      {staffId === null ? 'Add closed days' : 'Add days off'}
    </Button>
  );
  const withdraw = useAct('absences.withdraw');
  const own = absences.filter((row) => row.staffId === staffId || row.staffId === null);
  return (
    <Panel
      title={staffId === null ? 'Closed days' : 'Away'}
      action={mayEdit && !isAdding ? wasAdding ? <LedTo>{add}</LedTo> : add : undefined}
    >
      <Stack>
        {isAdding ? (
          <LedTo>
            <AbsenceForm staffId={staffId} onDone={leave} />
          </LedTo>
        ) : null}
        <ErrorText error={withdraw.error} />
        {own.length === 0 ? (
          <EmptyState title="Nothing ahead">
            Holidays, courses, illness: nobody is booked on those days unseen.
          </EmptyState>
        ) : (
          <PlainTable
            caption={staffId === null ? 'Closed days' : 'Away'}
            rows={own}
            keyOf={(row) => row.absenceId}
            columns={[
              {
                label: 'Why',
                cell: ({ reason, staffId: whose }) => (whose === null ? `${reason} (everybody)` : reason),
              },
              { label: 'From', cell: ({ fromOn }) => <DateText day={fromOn} weekday /> },
              { label: 'Until', cell: ({ toOn }) => <DateText day={toOn} weekday /> },
              {
                label: 'Hours',
                cell: ({ fromMin, toMin }) => (fromMin === null ? 'all day' : spanWords(fromMin, toMin)),
              },
              {
                label: '',
                cell: ({ absenceId, reason }) =>
                  mayEdit ? (
                    <Button
                      variant="subtle"
                      aria-label={`Take back: ${reason}`}
                      onClick={() => void withdraw.act({ absenceId })}
                    >
                      Take back
                    </Button>
                  ) : null,
              },
            ]}
          />
        )}
      </Stack>
    </Panel>
  );
}

function AbsenceForm({ staffId, onDone }: { readonly staffId: string | null; readonly onDone: () => void }) {
  const form = useDraftForm({
    draftKey: `absence.${staffId ?? 'firm'}`,
    operation: 'absences.add',
    initial: { reason: '', fromOn: '', toOn: '', hours: '' },
    toInput: (values, reader) => {
      const span = readSpan(values.hours);
      if (span === undefined) reader.fail('hours', 'From and to, for example 13:00–17:00.');
      const fromOn = reader.neededDay('fromOn', values.fromOn);
      return {
        staffId,
        reason: values.reason,
        fromOn,
        toOn: reader.day('toOn', values.toOn) ?? fromOn,
        fromMin: span?.fromMin ?? null,
        toMin: span?.toMin ?? null,
      };
    },
    onDone,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Add" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <div className="lo-fields">
        <TextField form={form} name="reason" label="Why" placeholder="holiday" isNeeded />
        <DayField form={form} name="fromOn" label="From" description="Or: today, tomorrow." isNeeded />
        <DayField form={form} name="toOn" label="Last day" description="Empty: one day." />
        <TextField form={form} name="hours" label="Hours" description="Empty: all day." placeholder="13:00–17:00" />
      </div>
    </DraftFormFrame>
  );
}
