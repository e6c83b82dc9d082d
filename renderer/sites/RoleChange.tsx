/** One person's part at a site put right or ended, and how they are reached. */
import { Stack } from '@mantine/core';
import { PARTY_ROLES } from '../../domain/vocabulary/people.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import { PartyFieldset } from '../customers/PartyFieldset.tsx';
import { partyFromForm, partyToForm } from '../customers/partyForm.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { SelectField } from '../form/SelectField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { ConfirmUndo } from '../kit/ConfirmUndo.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { optionsOf, PARTY_ROLE_WORDS } from '../kit/tradeWords.ts';
import { useAct } from '../operations/useAct.ts';
import { PersonDataPanel } from '../persons/PersonDataPanel.tsx';

type Role = OutputOf<'sites.get'>['roles'][number];

export function RoleChange({
  role,
  onDone,
  onRemoved,
}: {
  readonly role: Role;
  readonly onDone: () => void;
  readonly onRemoved: () => void;
}) {
  const remove = useAct('sites.removeRole');
  return (
    <Panel title={`${role.name}, ${PARTY_ROLE_WORDS[role.role]}`} level={3}>
      <Stack>
        <PartForm role={role} onDone={onDone} />
        {role.isErased ? null : <ReachForm role={role} onDone={onDone} />}
        <ConfirmUndo
          label="Take the role off"
          confirmLabel="Take it off"
          isBusy={remove.isBusy}
          onConfirm={async () => {
            if (!(await remove.act({ roleId: role.roleId })).ok) return;
            onRemoved();
            onDone();
          }}
        >
          For a role that never was. Somebody who left keeps it, with the last day above.
        </ConfirmUndo>
        <ErrorText error={remove.error} />
        <PersonDataPanel partyId={role.partyId} level={3} />
      </Stack>
    </Panel>
  );
}

function PartForm({
  role: { roleId, role, fromOn, toOn },
  onDone,
}: {
  readonly role: Role;
  readonly onDone: () => void;
}) {
  const form = useDraftForm({
    draftKey: `role-change.${roleId}`,
    operation: 'sites.updateRole',
    initial: {
      role: role as string,
      fromOn: fromOn === null ? '' : dayWords(fromOn),
      toOn: toOn === null ? '' : dayWords(toOn),
    },
    toInput: (values, reader) => ({
      roleId,
      role: PARTY_ROLES.find((one) => one === values.role) ?? role,
      fromOn: reader.day('fromOn', values.fromOn),
      toOn: reader.day('toOn', values.toOn),
    }),
    onDone,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Save the role" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <div className="lo-fields">
        <SelectField form={form} name="role" label="Role" options={optionsOf(PARTY_ROLE_WORDS)} />
        <DayField form={form} name="fromOn" label="Since" />
        <DayField form={form} name="toOn" label="Until" description="The last day. Empty: still so." />
      </div>
    </DraftFormFrame>
  );
}

function ReachForm({ role: { partyId, party }, onDone }: { readonly role: Role; readonly onDone: () => void }) {
  const form = useDraftForm({
    draftKey: `party.${partyId}`,
    operation: 'parties.update',
    inputRoot: 'party',
    initial: partyToForm(party),
    toInput: (values, reader) => ({ partyId, party: partyFromForm(values, reader) }),
    onDone,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Save the person" failure={<ErrorText error={form.error} />}>
      <PartyFieldset form={form} />
    </DraftFormFrame>
  );
}
