/** The fields of a licence. */
import { AmountField } from '../form/AmountField.tsx';
import { DayField } from '../form/DayField.tsx';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import type { DraftForm } from '../form/useDraftForm.ts';
import { FUEL_WORDS, optionsOf } from '../kit/tradeWords.ts';
import type { LicenceForm } from './licenceForm.ts';

export function LicenceFieldset({ form }: { readonly form: DraftForm<LicenceForm> }) {
  return (
    <div className="lo-fields">
      <TextField form={form} name="licenceClass" label="Class" isNeeded />
      <TextField form={form} name="number" label="Number" isNeeded />
      <TextField form={form} name="issuer" label="Issued by" isNeeded />
      <TextField form={form} name="place" label="Valid in" placeholder="state, province or country" isNeeded />
      <SelectField form={form} name="fuel" label="Fuel" options={optionsOf(FUEL_WORDS)} emptyLabel="Any" />
      <AmountField form={form} name="maxKw" label="Largest input" description="Empty: any size." dimension="power" />
      <DayField form={form} name="validFrom" label="Valid from" isNeeded />
      <DayField form={form} name="validTo" label="Last day" isNeeded />
    </div>
  );
}
