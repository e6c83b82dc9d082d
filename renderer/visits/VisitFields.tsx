/** Day, times, length and crew of a visit. */
import { Stack } from '@mantine/core';
import { DayField } from '../form/DayField.tsx';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import type { DraftForm } from '../form/useDraftForm.ts';
import { CrewFields } from './CrewFields.tsx';
import { howFirm, type VisitForm } from './visitForm.ts';

export function VisitFields<V extends VisitForm>({
  form: given,
  jobIds,
  isReady,
}: {
  readonly form: DraftForm<V>;
  readonly jobIds: readonly string[];
  /** Nothing that must be given is open on any of the jobs. */
  readonly isReady: boolean;
}) {
  // Only the visit's own fields are touched here, whatever else the form holds.
  const form: DraftForm<VisitForm> = { ...given, set: (patch) => given.set(patch as Partial<V>) };
  const shown: VisitForm = { ...form.values, isPencilled: howFirm(form.values, isReady) };
  return (
    <Stack gap="md">
      <div className="lo-fields">
        <DayField form={form} name="plannedOn" label="Day" isNeeded />
        <TextField form={form} name="plannedFrom" label="Arrive from" placeholder="8:00" />
        <TextField form={form} name="plannedTo" label="at the latest" placeholder="10:00" />
        <TextField form={form} name="duration" label="Time on site" placeholder="3 h" isNeeded />
        <SelectField
          form={{ ...form, values: shown }}
          name="isPencilled"
          label="How firm"
          options={[
            { value: 'yes', label: 'pencilled in: readiness still open' },
            { value: 'no', label: 'planned: readiness is given' },
          ]}
        />
      </div>
      <CrewFields
        jobIds={jobIds}
        plannedOn={form.values.plannedOn}
        crew={form.values.crew}
        error={form.errors['crew']}
        onCrew={(crew) => form.set({ crew })}
      />
    </Stack>
  );
}
