/** The fields of an appliance, in the order one reads them off the plate. */
import { Stack } from '@mantine/core';
import { AmountField } from '../form/AmountField.tsx';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import type { DraftForm } from '../form/useDraftForm.ts';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { FUEL_WORDS, optionsOf } from '../kit/tradeWords.ts';
import { useOperation } from '../operations/useOperation.ts';
import type { ApplianceForm } from './applianceForm.ts';

export function ApplianceFieldset<V extends ApplianceForm>({ form: given }: { readonly form: DraftForm<V> }) {
  // Only the appliance's own fields are touched here, whatever else the form holds.
  const form: DraftForm<ApplianceForm> = { ...given, set: (patch) => given.set(patch as Partial<V>) };
  const sheets = useOperation('sheets.list', {});
  const list = sheets.state === 'ready' ? sheets.value : [];
  const { plateFuel, tagFuel } = form.values;
  const makers = [...new Set(list.flatMap(({ maker }) => (maker === null ? [] : [maker])))];
  return (
    <Stack gap="md">
      <Panel title="From the plate">
        <Stack gap="md">
          <div className="lo-fields">
            <TextField form={form} name="maker" label="Maker" suggestions={makers} isNeeded autoFocus />
            <TextField
              form={form}
              name="model"
              label="Model"
              suggestions={list.flatMap(({ models }) => models)}
              isNeeded
            />
            <TextField
              form={form}
              name="serial"
              label="Serial number"
              description="Letter by letter: O and 0, I and 1, S and 5 are easily swapped."
              isNeeded
            />
            <SelectField
              form={form}
              name="plateFuel"
              label="Fuel on the plate"
              options={optionsOf(FUEL_WORDS)}
              emptyLabel="Not known"
            />
            <SelectField
              form={form}
              name="tagFuel"
              label="Fuel on a tag or the carton"
              options={optionsOf(FUEL_WORDS)}
              emptyLabel="No tag, or the same"
            />
            <AmountField
              form={form}
              name="ratedInputKw"
              label="Rated input"
              description="The number and unit as on the plate."
              dimension="power"
            />
            <SelectField
              form={form}
              name="ratedInputBasis"
              label="Rated on"
              options={[
                { value: 'gross', label: 'gross heating value (usual in North America)' },
                { value: 'net', label: 'net heating value (usual in Europe)' },
              ]}
            />
            <SelectField
              form={form}
              name="sheetId"
              label="Model sheet"
              description="Without the maker’s own the general-practice sheet for the fuel is used."
              options={list.map(({ sheetId, title }) => ({ value: sheetId, label: title }))}
              emptyLabel="General practice"
            />
          </div>
          {plateFuel !== '' && tagFuel !== '' && plateFuel !== tagFuel ? (
            <Note tone="caution" isSpoken>
              Plate and tag name different fuels. Before it may be lit, a conversion must be on record.
            </Note>
          ) : null}
        </Stack>
      </Panel>
      <Panel title="Vent">
        <div className="lo-fields">
          <TextField form={form} name="ventKind" label="Kind and material" placeholder="concentric 60/100, PP …" />
          <AmountField form={form} name="ventLengthM" label="Length" dimension="length" />
          <TextField form={form} name="ventElbows" label="Elbows" />
          <SelectField
            form={form}
            name="isVentConcealed"
            label="Hidden in a shaft or wall"
            options={[
              { value: 'yes', label: 'yes' },
              { value: 'no', label: 'no' },
            ]}
            emptyLabel="Not known"
          />
          <TextField form={form} name="note" label="Note" lines={2} />
        </div>
      </Panel>
    </Stack>
  );
}
