/** Who is who at a site: owner, occupant, builder, payer … each since when. */
import { Button, Stack } from '@mantine/core';
import { useState } from 'react';
import { PARTY_ROLES } from '../../domain/vocabulary/people.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import { PartyFieldset } from '../customers/PartyFieldset.tsx';
import { emptyParty, partyFromForm } from '../customers/partyForm.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { SelectField } from '../form/SelectField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { DateText } from '../kit/DateText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { optionsOf, PARTY_ROLE_WORDS } from '../kit/tradeWords.ts';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';

const SOMEBODY_NEW = 'new';

export function RolesPanel({ site, mayEdit }: { readonly site: OutputOf<'sites.get'>; readonly mayEdit: boolean }) {
  const [isAdding, setIsAdding] = useState(false);
  const canAdd = mayEdit && !isAdding;
  return (
    <Panel
      title="People here"
      action={
        canAdd ? (
          <Button variant="default" onClick={() => setIsAdding(true)}>
            Add a role
          </Button>
        ) : undefined
      }
    >
      <Stack>
        {isAdding ? <RoleForm site={site} onDone={() => setIsAdding(false)} /> : null}
        {site.roles.length === 0 ? (
          <EmptyState title="Nobody named yet">
            Owner, occupant, builder, payer and key holder can be five different people. The packet asks for the owner,
            the visit for the key holder; on a new build the occupant counts.
          </EmptyState>
        ) : (
          <PlainTable
            caption="People at this site"
            rows={site.roles}
            keyOf={(row) => `${row.partyId} ${row.role} ${row.fromOn}`}
            columns={[
              { label: 'Name', cell: ({ name }) => name },
              { label: 'Role', cell: ({ role }) => PARTY_ROLE_WORDS[role] },
              { label: 'Since', cell: ({ fromOn }) => (fromOn === null ? '' : <DateText day={fromOn} />) },
              { label: 'Until', cell: ({ toOn }) => (toOn === null ? '' : <DateText day={toOn} />) },
            ]}
          />
        )}
      </Stack>
    </Panel>
  );
}

function RoleForm({ site, onDone }: { readonly site: OutputOf<'sites.get'>; readonly onDone: () => void }) {
  const { company } = useAppStatus();
  const customer = useOperation('customers.get', { customerId: site.customerId });
  const customerParty = customer.state === 'ready' ? customer.value.party : null;
  const form = useDraftForm({
    draftKey: `role.${site.siteId}`,
    operation: 'sites.addRole',
    inputRoot: 'party',
    initial: { ...emptyParty(company?.country ?? ''), who: SOMEBODY_NEW, role: 'owner', fromOn: '' },
    toInput: (values, reader) => ({
      siteId: site.siteId,
      party: values.who === SOMEBODY_NEW ? partyFromForm(values, reader) : { partyId: values.who },
      role: PARTY_ROLES.find((role) => role === values.role) ?? 'owner',
      fromOn: reader.day('fromOn', values.fromOn),
    }),
    onDone,
  });
  const known = [
    ...(customerParty === null
      ? []
      : [{ value: customerParty.partyId, label: `${customerParty.name} (the customer)` }]),
    ...site.roles
      .filter(({ partyId }, index) => site.roles.findIndex((other) => other.partyId === partyId) === index)
      .filter(({ partyId }) => partyId !== customerParty?.partyId)
      .map(({ partyId, name }) => ({ value: partyId, label: name })),
  ];
  return (
    <DraftFormFrame form={form} submitLabel="Add" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <div className="lo-fields">
        <SelectField form={form} name="role" label="Role" options={optionsOf(PARTY_ROLE_WORDS)} />
        <SelectField
          form={form}
          name="who"
          label="Who"
          options={[...known, { value: SOMEBODY_NEW, label: 'somebody not on file yet' }]}
        />
        <DayField form={form} name="fromOn" label="Since" />
      </div>
      {form.values.who === SOMEBODY_NEW ? <PartyFieldset form={form} withAddress={false} /> : null}
    </DraftFormFrame>
  );
}
