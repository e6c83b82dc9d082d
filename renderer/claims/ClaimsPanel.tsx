/** Claims for one appliance: what was asked of the maker, and what came of it for parts and for labour. */
import { Button, Group, Stack } from '@mantine/core';
import { useState } from 'react';
import type { ClaimRow } from '../../electron/contract/history.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import { type DraftForm, useDraftForm } from '../form/useDraftForm.ts';
import { Answer } from '../kit/Answer.tsx';
import { DateText } from '../kit/DateText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { optionsOf } from '../kit/tradeWords.ts';
import { useAppStatus, useHasRole } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { Shortcut } from '../shortcuts/Shortcut.tsx';
import { ClaimFileButton } from './ClaimFileButton.tsx';
import { amountText, type ClaimForm, claimFromForm, claimToForm, emptyClaim, PART_OUTCOME_WORDS } from './claimForm.ts';
import { CLAIM_OUTCOME_WORDS } from './claimWords.ts';

export function ClaimsPanel({ applianceId }: { readonly applianceId: string }) {
  const found = useOperation('claims.list', { applianceId });
  const mayEdit = useHasRole('owner', 'dispatcher');
  const [editing, setEditing] = useState<string | null>(null);
  return (
    <Panel
      title="Claims"
      action={
        mayEdit && editing === null ? (
          <Button variant="default" onClick={() => setEditing('new')}>
            New claim
          </Button>
        ) : undefined
      }
    >
      {mayEdit ? <Shortcut keys="n" label="New claim" onPress={() => setEditing('new')} /> : null}
      <Stack gap="md">
        {editing === 'new' ? <NewClaim applianceId={applianceId} onDone={() => setEditing(null)} /> : null}
        <Answer of={found}>
          {(rows) =>
            rows.length === 0 ? (
              <EmptyState title="No claim">A part that failed in its term: ask for parts and labour apart.</EmptyState>
            ) : (
              <ClaimTable rows={rows} editing={editing} mayEdit={mayEdit} onEdit={setEditing} />
            )
          }
        </Answer>
      </Stack>
    </Panel>
  );
}

function ClaimTable({
  rows,
  editing,
  mayEdit,
  onEdit,
}: {
  readonly rows: readonly ClaimRow[];
  readonly editing: string | null;
  readonly mayEdit: boolean;
  readonly onEdit: (claimId: string | null) => void;
}) {
  const edited = rows.find(({ claimId }) => claimId === editing);
  return (
    <>
      <PlainTable
        caption="Claims"
        rows={rows}
        keyOf={({ claimId }) => claimId}
        columns={[
          { label: 'Part', cell: ({ claim }) => [claim.partNumber, claim.partName].filter(Boolean).join(', ') },
          { label: 'Opened', cell: ({ claim }) => <DateText day={claim.openedOn} /> },
          {
            label: 'Outcome',
            cell: ({ outcome, claim }) => (
              <>
                {CLAIM_OUTCOME_WORDS[outcome]}
                {claim.refusedBecause === null ? null : <div className="lo-faint">{claim.refusedBecause}</div>}
              </>
            ),
          },
          {
            label: 'Parts',
            cell: ({ claim }) => decidedWords(claim.partsGrantedMinorUnits, claim.partsOutcome, claim.currency),
          },
          {
            label: 'Labour',
            cell: ({ claim }) => decidedWords(claim.labourGrantedMinorUnits, claim.labourOutcome, claim.currency),
          },
          {
            label: 'Do',
            cell: ({ claimId, applianceId, claim }) => (
              <Group gap="xs">
                {mayEdit ? (
                  <Button
                    variant="default"
                    aria-label={`Edit the claim for ${claim.partNumber}`}
                    onClick={() => onEdit(claimId)}
                  >
                    Edit
                  </Button>
                ) : null}
                <ClaimFileButton applianceId={applianceId} claimId={claimId} partNumber={claim.partNumber} />
              </Group>
            ),
          },
        ]}
      />
      {edited === undefined ? null : <EditClaim key={edited.claimId} row={edited} onDone={() => onEdit(null)} />}
    </>
  );
}

function decidedWords(
  granted: number | null,
  outcome: keyof typeof PART_OUTCOME_WORDS | null,
  currency: string | null,
): string {
  if (outcome === null) return '–';
  return granted === null
    ? PART_OUTCOME_WORDS[outcome]
    : `${PART_OUTCOME_WORDS[outcome]}, ${amountText(granted, currency)} ${currency ?? ''}`;
}

function NewClaim({ applianceId, onDone }: { readonly applianceId: string; readonly onDone: () => void }) {
  const { today, company } = useAppStatus();
  const form = useDraftForm({
    draftKey: `new-claim.${applianceId}`,
    operation: 'claims.open',
    inputRoot: 'claim',
    initial: emptyClaim(today, company?.country ?? ''),
    toInput: (values, reader) => ({ applianceId, claim: claimFromForm(values, reader) }),
    onDone,
  });
  return (
    <DraftFormFrame
      form={form}
      submitLabel="Open the claim"
      failure={<ErrorText error={form.error} />}
      onLeave={onDone}
    >
      <ClaimFieldset form={form} />
    </DraftFormFrame>
  );
}

function EditClaim({ row, onDone }: { readonly row: ClaimRow; readonly onDone: () => void }) {
  const form = useDraftForm({
    draftKey: `claim.${row.claimId}`,
    operation: 'claims.update',
    inputRoot: 'claim',
    initial: claimToForm(row.claim),
    toInput: (values, reader) => ({ claimId: row.claimId, claim: claimFromForm(values, reader) }),
    onDone,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Save" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <ClaimFieldset form={form} />
    </DraftFormFrame>
  );
}

function ClaimFieldset({ form }: { readonly form: DraftForm<ClaimForm> }) {
  const outcomes = optionsOf(PART_OUTCOME_WORDS);
  return (
    <div className="lo-fields">
      <TextField form={form} name="partNumber" label="Part number" isNeeded />
      <TextField form={form} name="partName" label="Part" placeholder="heat exchanger" />
      <DayField form={form} name="openedOn" label="Opened" isNeeded />
      <DayField form={form} name="sentOn" label="Sent to the maker" />
      <DayField form={form} name="partReturnedOn" label="Part sent back" />
      <TextField form={form} name="claimNumber" label="Maker’s claim number" />
      <TextField form={form} name="currency" label="Currency" placeholder="USD" description="Three letters." />
      <DayField form={form} name="decidedOn" label="Decided" />
      <TextField form={form} name="parts" label="Parts asked for" placeholder="385.00" />
      <SelectField form={form} name="partsOutcome" label="Parts" options={outcomes} emptyLabel="Not decided" />
      <TextField form={form} name="partsGranted" label="Parts granted" />
      <TextField form={form} name="labour" label="Labour asked for" placeholder="755.00" />
      <SelectField form={form} name="labourOutcome" label="Labour" options={outcomes} emptyLabel="Not decided" />
      <TextField form={form} name="labourGranted" label="Labour granted" />
      <SelectField form={form} name="state" label="The claim" options={optionsOf(STATE_WORDS)} />
      <TextField
        form={form}
        name="refusedBecause"
        label="Refused because"
        description="In the maker’s words."
        lines={2}
      />
      <TextField form={form} name="note" label="Note" lines={2} />
    </div>
  );
}

const STATE_WORDS = { standing: 'stands', withdrawn: 'was withdrawn' } as const;
