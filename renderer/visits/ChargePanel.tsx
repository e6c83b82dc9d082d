/** Whether each job of a visit is charged, and the invoice's number and day; the invoice itself is the accounting's. */
import { Button, Checkbox, Stack } from '@mantine/core';
import { useState } from 'react';
import type { Charge } from '../../electron/contract/charges.ts';
import type { VisitRow } from '../../electron/contract/visits.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { Answer } from '../kit/Answer.tsx';
import { capital } from '../kit/capital.ts';
import { dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { JOB_KIND_WORDS } from '../kit/tradeWords.ts';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';

type Job = VisitRow['jobs'][number];

export function ChargePanel({ jobs }: { readonly jobs: readonly Job[] }) {
  return (
    <Panel title="Charged">
      <Stack gap="sm">
        {jobs.map((job) => (
          <JobCharge key={job.jobId} job={job} />
        ))}
      </Stack>
    </Panel>
  );
}

function JobCharge({ job: { jobId, kind, serial } }: { readonly job: Job }) {
  const found = useOperation('jobs.getCharge', { jobId });
  const mayEdit = useHasRole('dispatcher', 'owner', 'technician');
  const [isEditing, setIsEditing] = useState(false);
  const name = `${capital(JOB_KIND_WORDS[kind])}, ${serial}`;
  return (
    <Answer of={found}>
      {(charge) =>
        isEditing ? (
          <ChargeForm jobId={jobId} name={name} charge={charge} onDone={() => setIsEditing(false)} />
        ) : (
          <div>
            {name}: {chargeWords(charge)}{' '}
            {mayEdit ? (
              <Button variant="default" size="compact-sm" onClick={() => setIsEditing(true)}>
                Change<span className="lo-hidden"> how {name} is charged</span>
              </Button>
            ) : null}
          </div>
        )
      }
    </Answer>
  );
}

export function chargeWords({ isChargeable, reason, outsideInvoiceNumber, outsideInvoiceOn }: Charge): string {
  const invoice =
    outsideInvoiceNumber === null
      ? null
      : `invoice ${outsideInvoiceNumber}${outsideInvoiceOn === null ? '' : ` of ${dayWords(outsideInvoiceOn)}`}`;
  return [isChargeable ? 'charged' : 'not charged', reason, invoice].filter(Boolean).join(', ');
}

function ChargeForm({
  jobId,
  name,
  charge,
  onDone,
}: {
  readonly jobId: string;
  readonly name: string;
  readonly charge: Charge;
  readonly onDone: () => void;
}) {
  const form = useDraftForm({
    draftKey: `charge.${jobId}`,
    operation: 'jobs.setCharge',
    inputRoot: 'charge',
    initial: {
      isChargeable: charge.isChargeable,
      reason: charge.reason ?? '',
      outsideInvoiceNumber: charge.outsideInvoiceNumber ?? '',
      outsideInvoiceOn: charge.outsideInvoiceOn === null ? '' : dayWords(charge.outsideInvoiceOn),
    },
    toInput: (values, reader) => ({
      jobId,
      charge: {
        isChargeable: values.isChargeable,
        reason: reader.optional(values.reason),
        outsideInvoiceNumber: reader.optional(values.outsideInvoiceNumber),
        outsideInvoiceOn: reader.day('outsideInvoiceOn', values.outsideInvoiceOn),
      },
    }),
    onDone,
  });
  return (
    <Panel title={name} level={3}>
      <DraftFormFrame form={form} submitLabel="Save" failure={<ErrorText error={form.error} />} onLeave={onDone}>
        <Checkbox
          label="It is charged"
          checked={form.values.isChargeable}
          onChange={(event) => form.set({ isChargeable: event.currentTarget.checked })}
        />
        <div className="lo-fields">
          <TextField
            form={form}
            name="reason"
            label={form.values.isChargeable ? 'Remark' : 'Why not'}
            placeholder="under warranty, by agreement"
            isNeeded={!form.values.isChargeable}
          />
          <TextField
            form={form}
            name="outsideInvoiceNumber"
            label="Invoice number"
            description="From your accounting."
          />
          <DayField form={form} name="outsideInvoiceOn" label="Invoice of" />
        </div>
      </DraftFormFrame>
    </Panel>
  );
}
