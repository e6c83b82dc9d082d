/** The service agreements of one appliance: with whom, how often, from when until when; written, put right and ended here. */
import { Button, Group, Stack } from '@mantine/core';
import { useState } from 'react';
import type { OutputOf } from '../../electron/contract/index.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { Answer } from '../kit/Answer.tsx';
import { DateText } from '../kit/DateText.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { useAppStatus, useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { Shortcut } from '../shortcuts/Shortcut.tsx';
import { CorrectAgreement, WriteAgreement } from './AgreementForm.tsx';

type Agreement = OutputOf<'agreements.list'>['agreements'][number];
type Changing = { readonly how: 'correct' | 'end'; readonly agreement: Agreement };

export function AgreementsPanel({ applianceId }: { readonly applianceId: string }) {
  const found = useOperation('agreements.list', { applianceId });
  const mayWrite = useHasRole('dispatcher', 'owner');
  const [isWriting, setIsWriting] = useState(false);
  const [changing, setChanging] = useState<Changing | null>(null);
  return (
    <Panel
      title="Service agreement"
      action={
        mayWrite && !isWriting ? (
          <Button variant="default" onClick={() => setIsWriting(true)}>
            Write an agreement
          </Button>
        ) : undefined
      }
    >
      {mayWrite ? <Shortcut keys="a" label="Write an agreement" onPress={() => setIsWriting(true)} /> : null}
      <Answer of={found}>
        {({ agreements, parties }) => (
          <Stack>
            {isWriting ? (
              <WriteAgreement applianceId={applianceId} parties={parties} onDone={() => setIsWriting(false)} />
            ) : null}
            {changing?.how === 'correct' ? (
              <CorrectAgreement
                key={changing.agreement.agreementId}
                agreement={changing.agreement}
                parties={parties}
                onDone={() => setChanging(null)}
              />
            ) : null}
            {changing?.how === 'end' ? (
              <EndForm
                key={changing.agreement.agreementId}
                agreement={changing.agreement}
                onDone={() => setChanging(null)}
              />
            ) : null}
            {agreements.length === 0 ? (
              <EmptyState title="No agreement">
                An interval the customer agreed on with the firm. Beside the maker’s terms the earlier day counts: an
                agreement can bring a service forward. It never puts off what the maker’s terms ask for. Without maker’s
                terms it stands alone from its start, also when that is later than once a year.
              </EmptyState>
            ) : (
              <AgreementTable agreements={agreements} onChange={mayWrite ? setChanging : null} />
            )}
          </Stack>
        )}
      </Answer>
    </Panel>
  );
}

function AgreementTable({
  agreements,
  onChange,
}: {
  readonly agreements: readonly Agreement[];
  readonly onChange: ((changing: Changing) => void) | null;
}) {
  return (
    <PlainTable
      caption="Service agreements"
      rows={agreements}
      keyOf={({ agreementId }) => agreementId}
      columns={[
        { label: 'Number', cell: ({ number }) => number ?? 'none' },
        { label: 'With', cell: ({ partyName }) => partyName },
        { label: 'Service', cell: ({ everyMonths }) => everyWords(everyMonths) },
        { label: 'From', cell: ({ fromOn }) => <DateText day={fromOn} /> },
        { label: 'Until', cell: ({ toOn }) => (toOn === null ? 'until ended' : <DateText day={toOn} />) },
        {
          label: 'Next step',
          cell: (agreement) =>
            onChange === null ? null : (
              <Group gap="xs">
                <Button
                  variant="default"
                  aria-label={`${endWords(agreement)}: the agreement from ${dayWords(agreement.fromOn)}`}
                  onClick={() => onChange({ how: 'end', agreement })}
                >
                  {endWords(agreement)}
                </Button>
                <Button
                  variant="default"
                  aria-label={`Correct: the agreement from ${dayWords(agreement.fromOn)}`}
                  onClick={() => onChange({ how: 'correct', agreement })}
                >
                  Correct
                </Button>
              </Group>
            ),
        },
      ]}
    />
  );
}

function EndForm({ agreement, onDone }: { readonly agreement: Agreement; readonly onDone: () => void }) {
  const { today } = useAppStatus();
  const form = useDraftForm({
    draftKey: `agreement-end.${agreement.agreementId}`,
    operation: 'agreements.end',
    initial: { toOn: dayWords(agreement.toOn ?? today) },
    toInput: (values, reader) => ({
      agreementId: agreement.agreementId,
      toOn: reader.neededDay('toOn', values.toOn),
    }),
    onDone,
  });
  const goOn = useAct('agreements.end');
  const goesOn = async () => {
    const reply = await goOn.act({ agreementId: agreement.agreementId, toOn: null });
    if (!reply.ok) return;
    form.discardDraft();
    onDone();
  };
  return (
    <DraftFormFrame
      form={form}
      submitLabel={endWords(agreement)}
      failure={<ErrorText error={form.error ?? goOn.error} />}
      beside={
        agreement.toOn === null ? undefined : (
          <Button variant="default" loading={goOn.isBusy} onClick={() => void goesOn()}>
            Goes on after all
          </Button>
        )
      }
      onLeave={onDone}
    >
      <DayField
        form={form}
        name="toOn"
        label={`Last day of the agreement from ${dayWords(agreement.fromOn)}`}
        description="What falls due after it is not owed by it any more; what fell due before stays until it is done."
        isNeeded
      />
    </DraftFormFrame>
  );
}

function endWords({ toOn }: Agreement): string {
  return toOn === null ? 'End it' : 'Change the end';
}

function everyWords(months: number): string {
  return months === 1 ? 'every month' : `every ${months} months`;
}
