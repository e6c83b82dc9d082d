/** The right number in the wrong unit, or of the wrong dial. */
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { changed, type EnteredSet, type Entry, entriesOf, lastNumber, numberOf } from '../enteredSet.ts';
import type { InjectedMistake } from './injectedMistake.ts';

const PSI_BAR = 0.0689475729;
const IN_WC_MBAR = 2.4908891;
const FT3_M3 = 0.0283168466;
const BTU_H_KW = 0.29307107e-3;
const BTU_FT3_MJ_M3 = 1 / 26.8392;
const ATMOSPHERE_BAR = 1.01325;

function withNumber(entry: Entry, value: number, decimals: number): Partial<Entry> {
  const text = value.toFixed(decimals);
  return { text: entry.text.includes(',') ? text.replace('.', ',') : text };
}

function firstChanged(mistaken: EnteredSet, clean: EnteredSet): Entry | undefined {
  return mistaken.entries.find((entry, at) => entry.text !== clean.entries[at]?.text);
}

const TEMPERATURES: readonly [readonly [QuantityKey, string | null], ...(readonly [QuantityKey, string | null])[]] = [
  ['supplyC', 'high'],
  ['returnC', 'high'],
  ['supplyC', 'low'],
  ['returnC', 'low'],
  ['flueGasC', 'high'],
  ['mixedOutletC', null],
];

const fahrenheitInCelsius: InjectedMistake = {
  row: 8,
  title: '°F in a °C field',
  inject: (set, random) => {
    if (set.unitSystem === 'us') return null;
    const [quantity, point] = random.pick(TEMPERATURES);
    return changed(set, quantity, point, (entry) => withNumber(entry, numberOf(entry.text) * 1.8 + 32, 1));
  },
  // The list: above 95 °C in water, and as °F it fits. Flue gas: above what the vent bears. Or supply and return so far apart
  // that no boiler is run like it (45 K).
  isCatchable: (mistaken, clean) => {
    const entry = firstChanged(mistaken, clean);
    if (entry === undefined) return false;
    const value = numberOf(entry.text);
    if (entry.quantity === 'flueGasC') return value > Math.min(110, mistaken.site.ventMaxC);
    const supply = lastNumber(mistaken, 'supplyC', entry.point);
    const returned = lastNumber(mistaken, 'returnC', entry.point);
    const isPair = entry.quantity === 'supplyC' || entry.quantity === 'returnC';
    return value > 95 || (isPair && supply !== null && returned !== null && Math.abs(supply - returned) > 45);
  },
};

const celsiusInFahrenheit: InjectedMistake = {
  row: 9,
  title: '°C in a °F field',
  inject: (set, random) => {
    if (set.unitSystem === 'metric') return null;
    const [quantity, point] = random.pick(TEMPERATURES);
    return changed(set, quantity, point, (entry) => withNumber(entry, (numberOf(entry.text) - 32) / 1.8, 1));
  },
  // The list: colder than mains or intake air. In a °F box that is below about 17 °C, and the number fits as °C.
  isCatchable: (mistaken, clean) => {
    const entry = firstChanged(mistaken, clean);
    return entry !== undefined && (numberOf(entry.text) - 32) / 1.8 < 17;
  },
};

const inchesOrMbar: InjectedMistake = {
  row: 10,
  title: 'in. w.c. and mbar',
  inject: (set, random) => {
    const point = random.pick(['static', 'dynamic', 'dynamic-all-on']);
    return changed(set, 'inletPressureMbarG', point, (entry) =>
      set.unitSystem === 'us'
        ? withNumber(entry, numberOf(entry.text) * IN_WC_MBAR, 1)
        : withNumber(entry, numberOf(entry.text) / IN_WC_MBAR, 1),
    );
  },
  // The list: the converted number fits the fuel's band, the raw one doesn't. Bands: natural gas 4–14 in. w.c. (10–35 mbar),
  // LP 8 in. w.c. (20 mbar) to a 50 mbar system with its tolerance.
  isCatchable: (mistaken, clean) => {
    const entry = firstChanged(mistaken, clean);
    if (entry === undefined) return false;
    const mbar = numberOf(entry.text) * (mistaken.unitSystem === 'us' ? IN_WC_MBAR : 1);
    return mistaken.site.fuel === 'natural-gas' ? mbar < 10 || mbar > 35 : mbar < 20 || mbar > 57.5;
  },
};

/** What a gauge may be marked in, in bar. */
const GAUGES = { bar: 1, psi: PSI_BAR, kPa: 0.01 } as const;

const PRESSURES: readonly [readonly [QuantityKey, string | null], ...(readonly [QuantityKey, string | null])[]] = [
  ['systemPressureBarG', 'cold'],
  ['systemPressureBarG', 'hot'],
  ['vesselPreChargeBarG', null],
];

const psiBarKpa: InjectedMistake = {
  row: 11,
  title: 'psi, bar and kPa',
  inject: (set, random) => {
    const field = set.unitSystem === 'us' ? 'psi' : 'bar';
    const gauge: keyof typeof GAUGES = field === 'psi' ? random.pick(['bar', 'kPa']) : random.pick(['psi', 'kPa']);
    const [quantity, point] = random.pick(PRESSURES);
    return changed(set, quantity, point, (entry) =>
      withNumber(entry, (numberOf(entry.text) * GAUGES[field]) / GAUGES[gauge], gauge === 'bar' ? 1 : 0),
    );
  },
  // The list: band test. A filled system shows 0.3 bar to its relief setting.
  isCatchable: (mistaken, clean) => {
    const entry = firstChanged(mistaken, clean);
    if (entry === undefined) return false;
    const bar = numberOf(entry.text) * GAUGES[mistaken.unitSystem === 'us' ? 'psi' : 'bar'];
    return bar < 0.3 || bar > Math.max(3.2, mistaken.site.reliefBar);
  },
};

const absolute: InjectedMistake = {
  row: 12,
  title: 'gauge and absolute',
  inject: (set) =>
    changed(set, 'systemPressureBarG', 'cold', (entry) =>
      set.unitSystem === 'us'
        ? withNumber(entry, numberOf(entry.text) + ATMOSPHERE_BAR / PSI_BAR, 1)
        : withNumber(entry, numberOf(entry.text) + ATMOSPHERE_BAR, 2),
    ),
  // The list: with the relief setting known, and one atmosphere less landing on a usual fill.
  isCatchable: (mistaken) => {
    const bar =
      (lastNumber(mistaken, 'systemPressureBarG', 'cold') ?? 0) * GAUGES[mistaken.unitSystem === 'us' ? 'psi' : 'bar'];
    const gauge = bar - ATMOSPHERE_BAR;
    return bar > 0.65 * mistaken.site.reliefBar && gauge > 0.5 && gauge < 1.9;
  },
};

const POWER = { kW: 1, 'Btu/h': BTU_H_KW, MBH: BTU_H_KW * 1000 } as const;

const powerUnit: InjectedMistake = {
  row: 14,
  title: 'MBH, Btu/h and kW',
  inject: (set, random) => {
    const field = set.unitSystem === 'us' ? 'Btu/h' : 'kW';
    const plate = random.pick(field === 'kW' ? (['Btu/h', 'MBH'] as const) : (['kW', 'MBH'] as const));
    return changed(set, 'ratedInputKw', null, (entry) =>
      withNumber(entry, (numberOf(entry.text) * POWER[field]) / POWER[plate], plate === 'Btu/h' ? 0 : 1),
    );
  },
  // The list: compared with the model's rating, which a general sheet does not have; without it, only what is beyond any
  // boiler (0.5 kW to 5 MW) shows.
  isCatchable: (mistaken) => {
    const kW = (lastNumber(mistaken, 'ratedInputKw', null) ?? 0) * POWER[mistaken.unitSystem === 'us' ? 'Btu/h' : 'kW'];
    return mistaken.sheetRatedKw !== null || kW < 0.5 || kW > 5000;
  },
};

const dialSize: InjectedMistake = {
  row: 15,
  title: 'dial size, ft³ and m³',
  inject: (set, random) => {
    if (entriesOf(set, 'meterDialM3').length === 0) return null;
    const factor =
      set.unitSystem === 'us' ? random.pick([2, 0.5, 4, 0.25, FT3_M3]) : random.pick([10, 0.1, 1 / FT3_M3]);
    return changed(set, 'meterDialM3', null, (entry) => withNumber(entry, numberOf(entry.text) * factor, 4));
  },
  // The list: the input's ratio to the rating. The plate's rating is typed in every set.
  isCatchable: () => true,
};

const heatingValueTen: InjectedMistake = {
  row: 16,
  title: 'heating value × 10',
  inject: (set, random) => {
    if (entriesOf(set, 'heatingValueMjPerM3').length === 0) return null;
    const factor = random.pick([10, 0.1]);
    return changed(set, 'heatingValueMjPerM3', null, (entry) => withNumber(entry, numberOf(entry.text) * factor, 2));
  },
  // The list: outside 700–1200 Btu/ft³ for natural gas.
  isCatchable: (mistaken) => {
    const unit = mistaken.unitSystem === 'us' ? 1 : 1 / BTU_FT3_MJ_M3;
    const btu = (lastNumber(mistaken, 'heatingValueMjPerM3', null) ?? 0) * unit;
    return btu < 690 || btu > 1210;
  },
};

export const UNIT_MISTAKES: readonly InjectedMistake[] = [
  fahrenheitInCelsius,
  celsiusInFahrenheit,
  inchesOrMbar,
  psiBarKpa,
  absolute,
  powerUnit,
  dialSize,
  heatingValueTen,
];
