/** The fields of the company, the same at the first run and in the settings. */
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import type { DraftForm } from '../form/useDraftForm.ts';
import { countryOptions, LANGUAGE_OPTIONS, ruleSetOptions, timeZoneNames, UNIT_SYSTEM_OPTIONS } from '../kit/places.ts';
import type { CompanyForm } from './companyForm.ts';

export function CompanyFields<V extends CompanyForm>({ form: given }: { readonly form: DraftForm<V> }) {
  // Only the company's own fields are touched here, whatever else the form holds.
  const form: DraftForm<CompanyForm> = { ...given, set: (patch) => given.set(patch as Partial<V>) };
  return (
    <div className="lo-fields">
      <TextField form={form} name="name" label="Company" isNeeded autoComplete="organization" />
      <TextField form={form} name="licenceNumber" label="Company licence number" />
      <TextField form={form} name="phone" label="Phone" />
      <TextField form={form} name="email" label="E-mail" />
      <TextField form={form} name="street" label="Street and number" />
      <TextField form={form} name="postcode" label="Postcode" />
      <TextField form={form} name="city" label="City" />
      <TextField form={form} name="region" label="State or province" />
      <SelectField
        form={form}
        name="country"
        label="Country"
        options={countryOptions()}
        emptyLabel="Choose …"
        isNeeded
      />
      <TextField
        form={form}
        name="timeZone"
        label="Time zone"
        description="Days and deadlines are counted in it. Each site may have its own."
        suggestions={timeZoneNames()}
        isNeeded
      />
      <SelectField
        form={form}
        name="unitSystem"
        label="Units"
        description="Everybody can choose their own later."
        options={UNIT_SYSTEM_OPTIONS}
      />
      <SelectField form={form} name="language" label="Language of documents" options={LANGUAGE_OPTIONS} />
      <SelectField
        form={form}
        name="jurisdiction"
        label="Safety ceilings and relief rule"
        description="Which cited safety ceilings apply where no site says otherwise."
        options={ruleSetOptions(given.values.jurisdiction)}
      />
      <TextField
        form={form}
        name="emergencyNumber"
        label="Gas emergency number"
        description="Printed for occupants. Without it the sheet for them is not printed."
      />
    </div>
  );
}
