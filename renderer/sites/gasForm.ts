/** A gas supply as a form holds it. */
import { connectedGasLoad } from '../../domain/judgement/site/connectedGasLoad.ts';
import type { UnitSystem } from '../../domain/quantity/preferredUnit.ts';
import type { GasSupplyFields } from '../../electron/contract/sites.ts';
import type { FormReader } from '../form/FormReader.ts';
import { readAmount, showAmount, type TypedAmount, usualUnit } from '../form/typedAmount.ts';
import { dayWords } from '../kit/dayWords.ts';
import { FUEL_WORDS, keyOf } from '../kit/tradeWords.ts';

export type LoadRow = {
  readonly rowId: string;
  readonly name: string;
  readonly inputKw: TypedAmount;
  readonly applianceId: string;
};

export type GasForm = {
  readonly kind: string;
  readonly fuel: string;
  readonly number: string;
  readonly dialM3: TypedAmount;
  readonly compensation: string;
  readonly capacityM3PerH: TypedAmount;
  readonly regulator: string;
  readonly nominalMbarG: TypedAmount;
  readonly tankVolumeL: TypedAmount;
  readonly heatingValueMjPerM3: TypedAmount;
  readonly heatingValueSource: string;
  readonly heatingValueOn: string;
  readonly loads: readonly LoadRow[];
};

export const COMPENSATION_WORDS = {
  none: 'none: counts as it flows',
  temperature: 'for temperature',
  'temperature-pressure': 'for temperature and pressure',
} as const;

export function emptyGas(unitSystem: UnitSystem): GasForm {
  const blank = (dimension: Parameters<typeof usualUnit>[0]) => ({ text: '', unit: usualUnit(dimension, unitSystem) });
  return {
    kind: 'meter',
    fuel: 'natural-gas',
    number: '',
    dialM3: blank('gas-volume'),
    compensation: '',
    capacityM3PerH: blank('gas-volume'),
    regulator: '',
    nominalMbarG: blank('gas-pressure'),
    tankVolumeL: blank('volume'),
    heatingValueMjPerM3: blank('heating-value'),
    heatingValueSource: '',
    heatingValueOn: '',
    loads: [],
  };
}

export function gasToForm(gas: GasSupplyFields, unitSystem: UnitSystem): GasForm {
  const unit = (dimension: Parameters<typeof usualUnit>[0]) => usualUnit(dimension, unitSystem);
  return {
    kind: gas.kind,
    fuel: gas.fuel,
    number: gas.number ?? '',
    dialM3: showAmount('gas-volume', gas.dialM3, unit('gas-volume'), 4),
    compensation: gas.compensation ?? '',
    capacityM3PerH: showAmount('gas-volume', gas.capacityM3PerH, unit('gas-volume'), 2),
    regulator: gas.regulator ?? '',
    nominalMbarG: showAmount('gas-pressure', gas.nominalMbarG, unit('gas-pressure'), 1),
    tankVolumeL: showAmount('volume', gas.tankVolumeL, unit('volume'), 0),
    heatingValueMjPerM3: showAmount('heating-value', gas.heatingValueMjPerM3, unit('heating-value'), 3),
    heatingValueSource: gas.heatingValueSource ?? '',
    heatingValueOn: gas.heatingValueOn === null ? '' : dayWords(gas.heatingValueOn),
    loads: gas.loads.map(({ name, inputKw, applianceId }) => ({
      rowId: crypto.randomUUID(),
      name,
      inputKw: showAmount('power', inputKw, unit('power'), 2),
      applianceId: applianceId ?? '',
    })),
  };
}

/** `typedBefore`: how the heating value on file was typed, kept while nobody touches it. */
export function gasFromForm(form: GasForm, typedBefore: string | null, reader: FormReader): GasSupplyFields {
  const isMeter = form.kind === 'meter';
  const heatingValue = form.heatingValueMjPerM3;
  const heatingValueMjPerM3 = reader.amount('heatingValueMjPerM3', heatingValue, 'heating-value');
  if (heatingValueMjPerM3 !== null && form.heatingValueSource.trim() === '')
    reader.fail(
      'heatingValueSource',
      'A heating value without its source proves nothing: supplier, bill, or “usual figure”.',
    );
  return {
    kind: isMeter ? 'meter' : 'tank',
    fuel: keyOf(FUEL_WORDS, form.fuel) ?? 'natural-gas',
    number: reader.optional(form.number),
    dialM3: isMeter ? reader.amount('dialM3', form.dialM3, 'gas-volume') : null,
    compensation: isMeter ? keyOf(COMPENSATION_WORDS, form.compensation) : null,
    capacityM3PerH: isMeter ? reader.amount('capacityM3PerH', form.capacityM3PerH, 'gas-volume') : null,
    regulator: reader.optional(form.regulator),
    nominalMbarG: reader.amount('nominalMbarG', form.nominalMbarG, 'gas-pressure'),
    tankVolumeL: isMeter ? null : reader.amount('tankVolumeL', form.tankVolumeL, 'volume'),
    heatingValueMjPerM3,
    heatingValueTyped:
      heatingValueMjPerM3 === null
        ? null
        : heatingValue.storedOwn === undefined
          ? `${heatingValue.text.trim()} ${heatingValue.unit}`
          : typedBefore,
    heatingValueSource: reader.optional(form.heatingValueSource),
    heatingValueOn: reader.day('heatingValueOn', form.heatingValueOn),
    loads: form.loads.map((row, index) => {
      const inputKw = reader.amount(`loads.${index}.inputKw`, row.inputKw, 'power');
      return { name: row.name, inputKw, applianceId: row.applianceId === '' ? null : row.applianceId };
    }),
  };
}

export type LoadBalance = {
  readonly loadKw: number;
  readonly capacityKw: number;
  /** Connected as well, their input not known: the sum is at least what it says. */
  readonly unknownLoads: readonly string[];
};

/** Connected loads against what the meter can give, as far as the form is readable; null while something is missing. */
export function loadBalance(form: GasForm): LoadBalance | null {
  if (form.kind !== 'meter' || form.loads.length === 0) return null;
  const capacity = readAmount('gas-volume', form.capacityM3PerH);
  const heatingValue = readAmount('heating-value', form.heatingValueMjPerM3);
  const loads = form.loads.map((row) => readAmount('power', row.inputKw));
  if (!capacity.ok || capacity.value === null || !heatingValue.ok || heatingValue.value === null) return null;
  const known = loads.flatMap((load) => (load.ok && load.value !== null ? [load.value] : []));
  if (known.length === 0) return null;
  const load = connectedGasLoad({
    loadsKwGross: known,
    heatingValueMjPerM3: heatingValue.value,
    meterCapacityM3PerH: capacity.value,
  });
  if (!load.ok) return null;
  return {
    loadKw: load.value.loadKw,
    capacityKw: load.value.capacityKw,
    unknownLoads: form.loads.flatMap(({ name }, index) => {
      const load = loads[index];
      return load?.ok === true && load.value !== null ? [] : [name.trim() || `appliance ${index + 1}`];
    }),
  };
}
