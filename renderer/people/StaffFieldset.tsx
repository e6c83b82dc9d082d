/** The particulars of somebody who works here. */
import { STAFF_ROLES, type StaffRole } from '../../domain/vocabulary/people.ts';
import { CheckGroup } from '../form/CheckGroup.tsx';
import { TextField } from '../form/TextField.tsx';
import type { DraftForm } from '../form/useDraftForm.ts';
import { roleWords } from '../kit/errorWords.ts';

export type StaffForm = {
  readonly name: string;
  readonly initials: string;
  readonly phone: string;
  readonly email: string;
  readonly roles: readonly StaffRole[];
};

export function StaffFieldset<V extends StaffForm>({ form: given }: { readonly form: DraftForm<V> }) {
  // Only the person's own fields are touched here, whatever else the form holds.
  const form: DraftForm<StaffForm> = { ...given, set: (patch) => given.set(patch as Partial<V>) };
  return (
    <div className="lo-fields">
      <TextField form={form} name="name" label="Name" isNeeded autoFocus />
      <TextField form={form} name="initials" label="Initials" isNeeded />
      <TextField form={form} name="phone" label="Phone" />
      <TextField form={form} name="email" label="E-mail" />
      <div className="lo-wide">
        <CheckGroup
          label="Roles"
          options={STAFF_ROLES.map((role) => ({ value: role, label: roleWords(role) }))}
          values={form.values.roles}
          error={form.errors['roles']}
          onValues={(roles) => form.set({ roles })}
        />
      </div>
    </div>
  );
}
