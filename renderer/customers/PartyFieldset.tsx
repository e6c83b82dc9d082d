/** The fields of a person or firm. */
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import type { DraftForm } from '../form/useDraftForm.ts';
import { countryOptions, LANGUAGE_OPTIONS } from '../kit/places.ts';
import type { PartyForm } from './partyForm.ts';

export function PartyFieldset<V extends PartyForm>({
  form: given,
  withAddress = true,
  leadsIn = false,
}: {
  readonly form: DraftForm<V>;
  readonly withAddress?: boolean;
  /** The form begins with the name: it stands on top, with nothing to decide before. */
  readonly leadsIn?: boolean;
}) {
  // Only the party's own fields are touched here, whatever else the form holds.
  const form: DraftForm<PartyForm> = { ...given, set: (patch) => given.set(patch as Partial<V>) };
  return (
    <div className="lo-fields">
      <SelectField
        form={form}
        name="kind"
        label="Person or firm"
        options={[
          { value: 'person', label: 'Person' },
          { value: 'firm', label: 'Firm' },
        ]}
      />
      <TextField form={form} name="name" label="Name" isNeeded autoFocus={leadsIn} />
      {form.values.kind === 'firm' ? <TextField form={form} name="contactName" label="Contact there" /> : null}
      <TextField form={form} name="phoneTyped" label="Phone" description="Any usual way of writing it." />
      <TextField form={form} name="email" label="E-mail" />
      <SelectField form={form} name="language" label="Language" options={LANGUAGE_OPTIONS} emptyLabel="Not known" />
      {withAddress ? (
        <>
          <TextField
            form={form}
            name="street"
            label="Street and number"
            description="For letters; the boiler’s address is the site."
          />
          <TextField form={form} name="postcode" label="Postcode" />
          <TextField form={form} name="city" label="City" />
          <TextField form={form} name="region" label="State or province" />
          <SelectField form={form} name="country" label="Country" options={countryOptions()} emptyLabel="Not known" />
        </>
      ) : null}
      <TextField form={form} name="note" label="Note" lines={2} />
    </div>
  );
}
