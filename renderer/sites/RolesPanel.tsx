/** Who is who at a site: owner, occupant, builder, payer … each since when. */
import { Button, Group, Stack } from '@mantine/core';
import { useState } from 'react';
import { PARTY_ROLES, type PartyRole } from '../../domain/vocabulary/people.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import { PartyFieldset } from '../customers/PartyFieldset.tsx';
import { emptyParty, partyFromForm } from '../customers/partyForm.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { SelectField } from '../form/SelectField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { PutBackTransfer } from '../history/PutBackTransfer.tsx';
import { DateText } from '../kit/DateText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { optionsOf, PARTY_ROLE_WORDS } from '../kit/tradeWords.ts';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { OwnerQuestion } from './OwnerQuestion.tsx';
import { RoleChange } from './RoleChange.tsx';

const SOMEBODY_NEW = 'new';

type Role = OutputOf<'sites.get'>['roles'][number];
/** null: nothing is open. */
type Open = { readonly newRole: PartyRole } | { readonly roleId: string } | null;

export function RolesPanel({ site, mayEdit }: { readonly site: OutputOf<'sites.get'>; readonly mayEdit: boolean }) {
  const [open, setOpen] = useState<Open>(null);
  const [removed, setRemoved] = useState<Role | null>(null);
  const newRole = open !== null && 'newRole' in open ? open.newRole : null;
  const chosen =
    open !== null && 'roleId' in open ? site.roles.find(({ roleId }) => roleId === open.roleId) : undefined;
  const close = () => setOpen(null);
  return (
    <Panel
      title="People here"
      action={
        mayEdit && newRole === null ? (
          <Button variant="default" onClick={() => setOpen({ newRole: 'owner' })}>
            Add a role
          </Button>
        ) : undefined
      }
    >
      <Stack>
        {removed === null ? null : <RemovedRole siteId={site.siteId} role={removed} onDone={() => setRemoved(null)} />}
        {newRole === null ? (
          <OwnerQuestion site={site} onAdd={mayEdit ? (role) => setOpen({ newRole: role }) : null} />
        ) : (
          <RoleForm key={newRole} site={site} role={newRole} onDone={close} />
        )}
        {chosen === undefined ? null : (
          <RoleChange key={chosen.roleId} role={chosen} onDone={close} onRemoved={() => setRemoved(chosen)} />
        )}
        {site.roles.length === 0 ? (
          <EmptyState title="Nobody named yet">
            Owner, occupant, builder, payer and key holder can be five different people. The packet asks for the owner,
            the visit for the key holder; on a new build the occupant counts.
          </EmptyState>
        ) : (
          <PlainTable
            caption="People at this site"
            rows={site.roles}
            keyOf={(row) => row.roleId}
            columns={[
              { label: 'Name', cell: ({ name }) => name },
              { label: 'Role', cell: ({ role }) => PARTY_ROLE_WORDS[role] },
              { label: 'Reached at', cell: ({ party }) => <Reach party={party} /> },
              { label: 'Since', cell: ({ fromOn }) => (fromOn === null ? '' : <DateText day={fromOn} />) },
              { label: 'Until', cell: ({ toOn }) => (toOn === null ? '' : <DateText day={toOn} />) },
              ...(mayEdit
                ? [
                    {
                      label: 'Change',
                      cell: ({ roleId, name, role }: Role) => (
                        <Button variant="default" onClick={() => setOpen({ roleId })}>
                          Change
                          <span className="lo-hidden">
                            {' '}
                            {name}, {PARTY_ROLE_WORDS[role]}
                          </span>
                        </Button>
                      ),
                    },
                  ]
                : []),
            ]}
          />
        )}
        <PutBackTransfer siteId={site.siteId} />
      </Stack>
    </Panel>
  );
}

function Reach({ party: { phoneTyped, email, contactName } }: { readonly party: Role['party'] }) {
  return (
    <>
      {contactName === null ? null : <div>{contactName}</div>}
      {phoneTyped === null ? null : <div>{phoneTyped}</div>}
      {email === null ? null : <div>{email}</div>}
    </>
  );
}

function RoleForm({
  site,
  role,
  onDone,
}: {
  readonly site: OutputOf<'sites.get'>;
  readonly role: PartyRole;
  readonly onDone: () => void;
}) {
  const { company } = useAppStatus();
  const customer = useOperation('customers.get', { customerId: site.customerId });
  const customerParty = customer.state === 'ready' ? customer.value.party : null;
  const form = useDraftForm({
    draftKey: `role.${site.siteId}.${role}`,
    operation: 'sites.addRole',
    inputRoot: 'party',
    initial: { ...emptyParty(company?.country ?? ''), who: SOMEBODY_NEW, role: role as string, fromOn: '' },
    toInput: (values, reader) => ({
      siteId: site.siteId,
      party: values.who === SOMEBODY_NEW ? partyFromForm(values, reader) : { partyId: values.who },
      role: PARTY_ROLES.find((one) => one === values.role) ?? role,
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

/** Said once, right after: the way back is to add the same role again. */
function RemovedRole({
  siteId,
  role: { partyId, name, role, fromOn },
  onDone,
}: {
  readonly siteId: string;
  readonly role: Role;
  readonly onDone: () => void;
}) {
  const add = useAct('sites.addRole');
  return (
    <Note
      tone="plain"
      isSpoken
      action={
        <Group gap="sm">
          <Button
            variant="default"
            loading={add.isBusy}
            onClick={async () => {
              if ((await add.act({ siteId, party: { partyId }, role, fromOn })).ok) onDone();
            }}
          >
            Put back
          </Button>
          <Button variant="default" onClick={onDone}>
            Close
          </Button>
        </Group>
      }
    >
      {name} is not {PARTY_ROLE_WORDS[role]} here any more.
      <ErrorText error={add.error} />
    </Note>
  );
}
