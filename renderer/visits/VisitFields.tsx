/** Day, times, length and crew of a visit. */
import { Stack } from '@mantine/core';
import type { AgedAnswer } from '../../domain/procedure/agedReadiness.ts';
import { DayField } from '../form/DayField.tsx';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import type { DraftForm } from '../form/useDraftForm.ts';
import { agedWords } from '../jobs/agedWords.ts';
import { capital } from '../kit/capital.ts';
import { CrewFields } from './CrewFields.tsx';
import { howFirm, type VisitForm } from './visitForm.ts';

export function VisitFields<V extends VisitForm>({
  form: given,
  jobIds,
  isReady,
  aged = [],
}: {
  readonly form: DraftForm<V>;
  readonly jobIds: readonly string[];
  /** Nothing that must be given is open on any of the jobs. */
  readonly isReady: boolean;
  /** Given, but to be asked again. */
  readonly aged?: readonly AgedAnswer[];
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
      {aged.length === 0 ? null : (
        <p style={{ margin: 0, color: 'var(--lo-ochre)' }}>
          Not so firm as it looks: ask again. {capital(agedWords(aged))}.
        </p>
      )}
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
