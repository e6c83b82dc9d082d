/** The gas of a site: meter or tank, what it can give, its heating value with source and date, and everything connected to it. */
import { Button, NativeSelect, Stack, TextInput } from '@mantine/core';
import { COMMON_HEATING_VALUES } from '../../domain/gas/commonHeatingValues.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import { AmountField, AmountInput } from '../form/AmountField.tsx';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import { showAmount, usualUnit } from '../form/typedAmount.ts';
import { type DraftForm, useDraftForm } from '../form/useDraftForm.ts';
import { useFocusAdded } from '../form/useFocusAdded.ts';
import { Answer } from '../kit/Answer.tsx';
import { Caution } from '../kit/Caution.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { Screen } from '../kit/Screen.tsx';
import { FUEL_WORDS, optionsOf } from '../kit/tradeWords.ts';
import { useUnitSystem } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { goTo } from '../route.ts';
import { GasLoadNote } from './GasLoadNote.tsx';
import {
  COMPENSATION_WORDS,
  emptyGas,
  type GasForm,
  gasFromForm,
  gasToForm,
  type LoadRow,
  loadBalance,
} from './gasForm.ts';

export function GasSupplyScreen({ siteId }: { readonly siteId: string }) {
  const found = useOperation('sites.get', { siteId });
  return (
    <Screen
      title="Gas supply"
      crumbs={
        <RouteLink to="site" params={{ siteId }}>
          Back to the site
        </RouteLink>
      }
    >
      <Answer of={found}>{(site) => <GasSupplyForm found={site} />}</Answer>
    </Screen>
  );
}

function GasSupplyForm({ found }: { readonly found: OutputOf<'sites.get'> }) {
  const unitSystem = useUnitSystem();
  const { siteId, gasSupply } = found;
  const form = useDraftForm({
    draftKey: `gas.${siteId}`,
    operation: 'sites.setGasSupply',
    inputRoot: 'gasSupply',
    initial: gasSupply === null ? emptyGas(unitSystem) : gasToForm(gasSupply, unitSystem),
    toInput: (values, reader) => ({
      siteId,
      gasSupply: gasFromForm(values, gasSupply?.heatingValueTyped ?? null, reader),
    }),
    onDone: () => goTo('site', { siteId }),
  });
  const isMeter = form.values.kind === 'meter';
  const balance = loadBalance(form.values);
  return (
    <DraftFormFrame form={form} submitLabel="Save" failure={<ErrorText error={form.error} />}>
      <Caution>
        Gas work only by a licensed person. What is typed here is for sums; the utility’s own data wins.
      </Caution>
      <Panel title={isMeter ? 'Meter' : 'Tank'}>
        <div className="lo-fields">
          <SelectField
            form={form}
            name="kind"
            label="Meter or tank"
            options={[
              { value: 'meter', label: 'meter' },
              { value: 'tank', label: 'tank, no meter to time' },
            ]}
          />
          <SelectField form={form} name="fuel" label="Fuel" options={optionsOf(FUEL_WORDS)} />
          <TextField form={form} name="number" label={isMeter ? 'Meter number' : 'Tank number'} />
          {isMeter ? (
            <>
              <AmountField
                form={form}
                name="dialM3"
                label="Test dial, one turn"
                description="Volume of one turn of the hand that is timed."
                dimension="gas-volume"
              />
              <SelectField
                form={form}
                name="compensation"
                label="Compensation"
                options={optionsOf(COMPENSATION_WORDS)}
                emptyLabel="Not known"
              />
              <AmountField
                form={form}
                name="capacityM3PerH"
                label="Capacity per hour"
                description="Written on the meter as m³/h or CFH."
                dimension="gas-volume"
              />
            </>
          ) : (
            <AmountField form={form} name="tankVolumeL" label="Tank volume" dimension="volume" />
          )}
          <TextField form={form} name="regulator" label="Regulator" placeholder="second stage, outside" />
          <AmountField form={form} name="nominalMbarG" label="Nominal pressure after it" dimension="gas-pressure" />
        </div>
      </Panel>
      <Panel title="Heating value" action={<UsualFigure form={form} />}>
        <div className="lo-fields">
          <AmountField
            form={form}
            name="heatingValueMjPerM3"
            label="Heating value, gross"
            description="From the supplier or the bill."
            dimension="heating-value"
          />
          <TextField form={form} name="heatingValueSource" label="Source" placeholder="gas bill, supplier’s page …" />
          <DayField form={form} name="heatingValueOn" label="As of" />
        </div>
      </Panel>
      <Panel title="Everything connected to it">
        <Stack gap="md">
          {balance === null ? (
            <p className="lo-faint" style={{ margin: 0 }}>
              With the capacity, the heating value and the appliances’ inputs, the sum is held against what the meter
              can give. An appliance whose input nobody knows belongs in the list all the same: leave its input empty.
            </p>
          ) : (
            <GasLoadNote balance={balance} />
          )}
          <Loads form={form} appliances={found.appliances} />
        </Stack>
      </Panel>
    </DraftFormFrame>
  );
}

/** Offered, never filled in by itself: a figure without the supplier behind it must not look like one with. */
function UsualFigure({ form }: { readonly form: DraftForm<GasForm> }) {
  const unitSystem = useUnitSystem();
  const { fuel, heatingValueMjPerM3 } = form.values;
  if (fuel === 'heating-oil' || heatingValueMjPerM3.text !== '') return null;
  const usual = COMMON_HEATING_VALUES[fuel as keyof typeof COMMON_HEATING_VALUES];
  const shown = showAmount('heating-value', usual.hhvMjPerM3, usualUnit('heating-value', unitSystem), 2);
  return (
    <Button
      variant="default"
      onClick={() =>
        form.set({
          heatingValueMjPerM3: { text: shown.text, unit: shown.unit },
          heatingValueSource: `usual figure (${usual.source}), not the supplier’s`,
        })
      }
    >
      Not known: take the usual {shown.text} {shown.unit}
    </Button>
  );
}

function Loads({
  form,
  appliances,
}: {
  readonly form: DraftForm<GasForm>;
  readonly appliances: OutputOf<'sites.get'>['appliances'];
}) {
  const unitSystem = useUnitSystem();
  const { loads } = form.values;
  const { added, rowRef } = useFocusAdded();
  const change = (index: number, patch: Partial<LoadRow>) =>
    form.set({ loads: loads.map((row, at) => (at === index ? { ...row, ...patch } : row)) });
  const add = () => {
    const rowId = crypto.randomUUID();
    added(rowId);
    const inputKw = { text: '', unit: usualUnit('power', unitSystem) };
    form.set({ loads: [...loads, { rowId, name: '', inputKw, applianceId: '' }] });
  };
  return (
    <Stack gap="md">
      {loads.map((row, index) => (
        <div key={row.rowId} className="lo-line-fields" ref={rowRef(row.rowId)}>
          <TextInput
            label={`Appliance ${index + 1}`}
            value={row.name}
            autoComplete="off"
            placeholder="range, dryer, fireplace …"
            error={form.errors[`loads.${index}.name`]}
            onChange={(event) => change(index, { name: event.currentTarget.value })}
          />
          <AmountInput
            label="Input"
            dimension="power"
            amount={row.inputKw}
            error={form.errors[`loads.${index}.inputKw`]}
            onAmount={(inputKw) => change(index, { inputKw })}
          />
          <NativeSelect
            label="On file here as"
            value={row.applianceId}
            data={[
              { value: '', label: 'not on file' },
              ...appliances.map(({ applianceId, maker, model, serial }) => ({
                value: applianceId,
                label: `${maker} ${model}, ${serial}`,
              })),
            ]}
            onChange={(event) => change(index, { applianceId: event.currentTarget.value })}
          />
          <Button
            variant="default"
            onClick={() => form.set({ loads: loads.filter(({ rowId }) => rowId !== row.rowId) })}
          >
            Remove<span className="lo-hidden"> appliance {index + 1}</span>
          </Button>
        </div>
      ))}
      <Uncounted form={form} appliances={appliances} />
      <div>
        <Button variant="default" onClick={add}>
          Add an appliance
        </Button>
      </div>
    </Stack>
  );
}

/** Appliances on file here that the list leaves out; one press puts each in with the input of its plate. */
function Uncounted({
  form,
  appliances,
}: {
  readonly form: DraftForm<GasForm>;
  readonly appliances: OutputOf<'sites.get'>['appliances'];
}) {
  const { loads } = form.values;
  const left = appliances.filter(({ applianceId }) => !loads.some((row) => row.applianceId === applianceId));
  return left.map(({ applianceId }) => <UncountedAppliance key={applianceId} applianceId={applianceId} form={form} />);
}

function UncountedAppliance({
  applianceId,
  form,
}: {
  readonly applianceId: string;
  readonly form: DraftForm<GasForm>;
}) {
  const unitSystem = useUnitSystem();
  const found = useOperation('appliances.get', { applianceId });
  if (found.state !== 'ready') return null;
  const { maker, model, serial, ratedInputKw } = found.value.appliance;
  const inputKw = showAmount('power', ratedInputKw, usualUnit('power', unitSystem), 2);
  return (
    <Note
      tone="caution"
      action={
        <Button
          variant="default"
          onClick={() =>
            form.set({
              loads: [
                ...form.values.loads,
                { rowId: crypto.randomUUID(), name: `${maker} ${model}`, inputKw, applianceId },
              ],
            })
          }
        >
          Count it{ratedInputKw === null ? '' : `: ${inputKw.text} ${inputKw.unit}`}
        </Button>
      }
    >
      {maker} {model}, {serial}, stands here and is not counted.
    </Note>
  );
}
