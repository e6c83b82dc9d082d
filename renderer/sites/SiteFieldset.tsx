/** The fields of a site: where it is, how one gets in, and the heating system that hangs on the boiler. */
import { Button, NativeSelect, Stack, TextInput } from '@mantine/core';
import { feetAsMetres } from '../../domain/judgement/mistakes/feetAsMetres.ts';
import { METRES_PER_FOOT } from '../../domain/quantity/conversions.ts';
import { formatNumber } from '../../domain/quantity/formatQuantity.ts';
import { AmountField, AmountInput } from '../form/AmountField.tsx';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import { readAmount, usualUnit } from '../form/typedAmount.ts';
import type { DraftForm } from '../form/useDraftForm.ts';
import { useFocusAdded } from '../form/useFocusAdded.ts';
import { Panel } from '../kit/Panel.tsx';
import { countryOptions, ruleSetOptions, timeZoneNames } from '../kit/places.ts';
import { BUILDING_WORDS, EMITTER_WORDS, optionsOf } from '../kit/tradeWords.ts';
import { useUnitSystem } from '../operations/AppStatus.tsx';
import type { EmitterRow, SiteForm } from './siteForm.ts';

export function SiteFieldset({
  form,
  neighbourAltitudesM,
}: {
  readonly form: DraftForm<SiteForm>;
  readonly neighbourAltitudesM: readonly number[];
}) {
  return (
    <Stack gap="md">
      <Panel title="Where it is">
        <div className="lo-fields">
          <TextField form={form} name="street" label="Street and number" isNeeded autoFocus />
          <TextField form={form} name="postcode" label="Postcode" />
          <TextField form={form} name="city" label="City" isNeeded />
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
            name="label"
            label="Called"
            description="When one customer has several: “boiler house”, “unit 3”."
          />
          <SelectField
            form={form}
            name="buildingKind"
            label="Building"
            description="Cover and its deadlines can depend on it."
            options={optionsOf(BUILDING_WORDS)}
          />
          <TextField
            form={form}
            name="access"
            label="Access"
            description="Who opens, phone, gate or alarm, parking, pets. Seen by everybody who goes there."
            lines={2}
          />
        </div>
        <SeldomChanged form={form} />
      </Panel>
      <Panel title="Heating system">
        <Stack gap="md">
          <div className="lo-fields">
            <AmountField
              form={form}
              name="altitudeM"
              label="Altitude above sea level"
              dimension="length"
              hint={<AltitudeHintText form={form} neighbourAltitudesM={neighbourAltitudesM} />}
            />
            <AmountField
              form={form}
              name="systemHeightM"
              label="System height"
              description="From the boiler’s gauge to the highest emitter."
              dimension="length"
            />
            <AmountField form={form} name="systemVolumeL" label="System volume" dimension="volume" />
            <SelectField
              form={form}
              name="systemVolumeHow"
              label="How the volume is known"
              options={[
                { value: 'metered', label: 'metered while filling' },
                { value: 'estimated', label: 'estimated' },
              ]}
              emptyLabel="Not known"
            />
            <AmountField form={form} name="coldWaterC" label="Cold water in" dimension="temperature" />
            <SelectField
              form={form}
              name="glycolKind"
              label="Glycol"
              options={[
                { value: 'propylene', label: 'propylene glycol' },
                { value: 'ethylene', label: 'ethylene glycol (poisonous)' },
              ]}
              emptyLabel="None known"
            />
          </div>
          <Emitters form={form} />
        </Stack>
      </Panel>
    </Stack>
  );
}

/** As the firm has it for nearly every site: one stop for the keyboard, opened where something is wrong in it. */
function SeldomChanged({ form }: { readonly form: DraftForm<SiteForm> }) {
  const { timeZone, jurisdiction, latitude, longitude } = form.values;
  const rules = ruleSetOptions(jurisdiction);
  const isWrong = (['timeZone', 'jurisdiction', 'latitude', 'longitude'] as const).some((name) => name in form.errors);
  const isPlaced = latitude.trim() !== '' && longitude.trim() !== '';
  return (
    <details className="lo-seldom" open={isWrong || undefined}>
      <summary className="lo-seldom-line">
        Time zone {timeZone}, rules of {rules.find(({ value }) => value === jurisdiction)?.label ?? jurisdiction},{' '}
        {isPlaced ? 'with its place on the map' : 'without its place on the map'}
      </summary>
      <div className="lo-fields">
        <TextField form={form} name="timeZone" label="Time zone" suggestions={timeZoneNames()} isNeeded />
        <SelectField form={form} name="jurisdiction" label="Safety ceilings and relief rule" options={rules} />
        <TextField form={form} name="latitude" label="Latitude" placeholder="45.508" />
        <TextField form={form} name="longitude" label="Longitude" placeholder="-73.587" />
      </div>
    </details>
  );
}

function AltitudeHintText({
  form,
  neighbourAltitudesM,
}: {
  readonly form: DraftForm<SiteForm>;
  readonly neighbourAltitudesM: readonly number[];
}) {
  const { altitudeM } = form.values;
  const read = readAmount('length', altitudeM);
  const hint = read.ok && read.value !== null ? feetAsMetres({ altitudeM: read.value, neighbourAltitudesM }) : null;
  if (hint === null) return null;
  const [otherUnit, neighbour] =
    hint.meant === 'feet'
      ? ['ft', `${formatNumber(hint.neighbourM / METRES_PER_FOOT, 0)} ft`]
      : ['m', `${formatNumber(hint.neighbourM, 0)} m`];
  return (
    <>
      The neighbours stand at about {neighbour}. Was {altitudeM.text} meant in {otherUnit}?{' '}
      <Button
        variant="default"
        onClick={() => form.set({ altitudeM: { text: altitudeM.text.replace(/[^\d.,-]/g, ''), unit: otherUnit } })}
      >
        Yes, {otherUnit}
      </Button>
    </>
  );
}

function Emitters({ form }: { readonly form: DraftForm<SiteForm> }) {
  const unitSystem = useUnitSystem();
  const { emitters } = form.values;
  const { added, rowRef } = useFocusAdded();
  const change = (index: number, patch: Partial<EmitterRow>) =>
    form.set({ emitters: emitters.map((row, at) => (at === index ? { ...row, ...patch } : row)) });
  const add = () => {
    const rowId = crypto.randomUUID();
    added(rowId);
    const ratedKw = { text: '', unit: usualUnit('power', unitSystem) };
    form.set({ emitters: [...emitters, { rowId, emitter: 'panel-radiators', zone: '', ratedKw }] });
  };
  return (
    <fieldset className="lo-fieldset">
      <legend>Emitters</legend>
      <Stack gap="md">
        {emitters.length === 0 ? (
          <p className="lo-faint" style={{ margin: 0 }}>
            What gives off the heat decides the supply temperatures and what is asked about the controls.
          </p>
        ) : null}
        {emitters.map((row, index) => (
          <div key={row.rowId} className="lo-line-fields" ref={rowRef(row.rowId)}>
            <NativeSelect
              label={`Emitter ${index + 1}`}
              value={row.emitter}
              data={[...optionsOf(EMITTER_WORDS)]}
              onChange={(event) => change(index, { emitter: event.currentTarget.value })}
            />
            <TextInput
              label="Zone"
              value={row.zone}
              autoComplete="off"
              error={form.errors[`emitters.${index}.zone`]}
              onChange={(event) => change(index, { zone: event.currentTarget.value })}
            />
            <AmountInput
              label="Rated output"
              dimension="power"
              amount={row.ratedKw}
              error={form.errors[`emitters.${index}.ratedKw`]}
              onAmount={(ratedKw) => change(index, { ratedKw })}
            />
            <Button
              variant="default"
              onClick={() => form.set({ emitters: emitters.filter(({ rowId }) => rowId !== row.rowId) })}
            >
              Remove<span className="lo-hidden"> emitter {index + 1}</span>
            </Button>
          </div>
        ))}
        <div>
          <Button variant="default" onClick={add}>
            Add an emitter
          </Button>
        </div>
      </Stack>
    </fieldset>
  );
}
