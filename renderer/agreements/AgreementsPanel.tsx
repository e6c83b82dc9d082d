/** The service agreements of one appliance: with whom, how often, from when until when; written and ended here. */
import { Button, Stack } from '@mantine/core';
import { useState } from 'react';
import { LONGEST_INTERVAL_MONTHS } from '../../electron/contract/agreements.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { Answer } from '../kit/Answer.tsx';
import { DateText } from '../kit/DateText.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { useAppStatus, useHasRole } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';

type Found = OutputOf<'agreements.list'>;
type Agreement = Found['agreements'][number];

export function AgreementsPanel({ applianceId }: { readonly applianceId: string }) {
  const found = useOperation('agreements.list', { applianceId });
  const mayWrite = useHasRole('dispatcher', 'owner');
  const [isWriting, setIsWriting] = useState(false);
  const [ending, setEnding] = useState<Agreement | null>(null);
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
      <Answer of={found}>
        {({ agreements, parties }) => (
          <Stack>
            {isWriting ? (
              <AgreementForm applianceId={applianceId} parties={parties} onDone={() => setIsWriting(false)} />
            ) : null}
            {ending === null ? null : (
              <EndForm key={ending.agreementId} agreement={ending} onDone={() => setEnding(null)} />
            )}
            {agreements.length === 0 ? (
              <EmptyState title="No agreement">
                An interval the customer agreed on with the firm. Beside the maker’s terms the earlier day counts: an
                agreement can bring a service forward. It never puts off what the maker’s terms ask for. Without maker’s
                terms it stands alone from its start, also when that is later than once a year.
              </EmptyState>
            ) : (
              <AgreementTable agreements={agreements} onEnd={mayWrite ? setEnding : null} />
            )}
          </Stack>
        )}
      </Answer>
    </Panel>
  );
}

function AgreementTable({
  agreements,
  onEnd,
}: {
  readonly agreements: readonly Agreement[];
  readonly onEnd: ((agreement: Agreement) => void) | null;
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
            onEnd === null ? null : (
              <Button
                variant="default"
                aria-label={`${endWords(agreement)}: the agreement from ${dayWords(agreement.fromOn)}`}
                onClick={() => onEnd(agreement)}
              >
                {endWords(agreement)}
              </Button>
            ),
        },
      ]}
    />
  );
}

function AgreementForm({
  applianceId,
  parties,
  onDone,
}: {
  readonly applianceId: string;
  readonly parties: Found['parties'];
  readonly onDone: () => void;
}) {
  const { today } = useAppStatus();
  const form = useDraftForm({
    draftKey: `agreement.${applianceId}`,
    operation: 'agreements.write',
    inputRoot: 'agreement',
    initial: {
      partyId: parties[0]?.partyId ?? '',
      number: '',
      everyMonths: '12',
      fromOn: dayWords(today),
      toOn: '',
    },
    toInput: (values, reader) => {
      const everyMonths = reader.whole('everyMonths', values.everyMonths);
      if (everyMonths === null) reader.fail('everyMonths', 'Needed.');
      else if (everyMonths < 1 || everyMonths > LONGEST_INTERVAL_MONTHS)
        reader.fail('everyMonths', `From 1 to ${LONGEST_INTERVAL_MONTHS} months.`);
      return {
        applianceId,
        agreement: {
          partyId: values.partyId,
          number: reader.optional(values.number),
          everyMonths: everyMonths ?? 1,
          fromOn: reader.neededDay('fromOn', values.fromOn),
          toOn: reader.day('toOn', values.toOn),
        },
      };
    },
    onDone,
  });
  if (parties.length === 0) {
    return (
      <EmptyState title="Nobody to agree with" action={<Button onClick={onDone}>Back</Button>}>
        No customer is on file where this appliance stands: give its site and customer first.
      </EmptyState>
    );
  }
  return (
    <DraftFormFrame form={form} submitLabel="Write it" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <div className="lo-fields">
        <SelectField
          form={form}
          name="partyId"
          label="With"
          options={parties.map(({ partyId, name }) => ({ value: partyId, label: name }))}
        />
        <TextField form={form} name="everyMonths" label="Service every … months" isNeeded />
        <DayField form={form} name="fromOn" label="From" description="Services are counted from this day." isNeeded />
        <DayField form={form} name="toOn" label="Until" description="The last day. Empty: until somebody ends it." />
        <TextField form={form} name="number" label="Number" />
      </div>
    </DraftFormFrame>
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
  return (
    <DraftFormFrame form={form} submitLabel="End it" failure={<ErrorText error={form.error} />} onLeave={onDone}>
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
