/**
 * The units people type a quantity in, per dimension, and the exact way into the quantity's own unit and back.
 * The unit is part of the reading: what was typed is kept beside the converted value.
 */
import {
  CUBIC_METRES_PER_CUBIC_FOOT,
  celsiusToFahrenheit,
  fahrenheitToCelsius,
  J_PER_BTU,
  LITRES_PER_US_GALLON,
  METRES_PER_FOOT,
  PA_PER_BAR,
  PA_PER_IN_WC,
  PA_PER_MBAR,
  PA_PER_PSI,
} from './conversions.ts';
import { type Dimension, type QuantityKey, quantitySpec } from './quantities.ts';

export type EntryUnit = {
  /** Stored and shown: `°F`, `in w.c.`, `psi`. */
  readonly symbol: string;
  /** Other spellings people type, lower case. */
  readonly spellings: readonly string[];
  readonly toOwn: (typed: number) => number;
  readonly fromOwn: (own: number) => number;
};

/** A unit that is so many of the own ones, with nothing added. */
export function linear(symbol: string, spellings: readonly string[], ownPerUnit: number): EntryUnit {
  return {
    symbol,
    spellings,
    toOwn: (typed) => typed * ownPerUnit,
    fromOwn: (own) => own / ownPerUnit,
  };
}

/** First unit of each list is the quantity's own. */
export const ENTRY_UNITS: Record<Dimension, readonly [EntryUnit, ...EntryUnit[]]> = {
  temperature: [
    linear('°C', ['c', 'degc', 'celsius', '° c'], 1),
    {
      symbol: '°F',
      spellings: ['f', 'degf', 'fahrenheit', '° f'],
      toOwn: (typed) => fahrenheitToCelsius(typed),
      fromOwn: (own) => celsiusToFahrenheit(own),
    },
  ],
  'temperature-difference': [
    linear('K', ['k', '°c', 'c', 'delta c'], 1),
    linear('°F', ['f', 'degf', 'delta f'], 1 / 1.8),
  ],
  'gas-pressure': [
    linear('mbar', ['mb', 'hpa'], 1),
    linear(
      'in w.c.',
      ['"wc', '"w.c.', 'inwc', 'in wc', 'in. w.c.', 'inh2o', 'in h2o', 'in', 'inch', 'inches', '"'],
      PA_PER_IN_WC / PA_PER_MBAR,
    ),
    linear('kPa', ['kpa'], 10),
    linear('psi', ['psi', 'psig'], PA_PER_PSI / PA_PER_MBAR),
    linear('Pa', ['pa'], 0.01),
  ],
  'system-pressure': [
    linear('bar', ['bar', 'barg', 'bar g'], 1),
    linear('psi', ['psi', 'psig', 'lb'], PA_PER_PSI / PA_PER_BAR),
    linear('kPa', ['kpa'], 0.01),
  ],
  power: [
    linear('kW', ['kw'], 1),
    linear('Btu/h', ['btu/h', 'btuh', 'btu', 'btus/h'], J_PER_BTU / 3.6e6),
    linear('MBH', ['mbh', 'kbtu/h'], J_PER_BTU / 3.6e3),
  ],
  flow: [
    linear('L/min', ['l/min', 'lpm'], 1),
    linear('US gpm', ['gpm', 'us gpm', 'gal/min'], LITRES_PER_US_GALLON),
    linear('L/h', ['l/h'], 1 / 60),
    linear('m³/h', ['m3/h'], 1000 / 60),
  ],
  length: [linear('m', ['m', 'metre', 'meter'], 1), linear('ft', ['ft', 'feet', "'"], METRES_PER_FOOT)],
  volume: [linear('L', ['l', 'litre', 'liter'], 1), linear('US gal', ['gal', 'us gal'], LITRES_PER_US_GALLON)],
  'gas-volume': [
    linear('m³', ['m3'], 1),
    linear('ft³', ['ft3', 'cf', 'cu ft', 'cubic foot', 'cubic feet'], CUBIC_METRES_PER_CUBIC_FOOT),
    linear('L', ['l', 'dm3'], 0.001),
  ],
  'heating-value': [
    linear('MJ/m³', ['mj/m3', 'mj/m³'], 1),
    linear('Btu/ft³', ['btu/ft3', 'btu/cf', 'btu/ft³'], J_PER_BTU / CUBIC_METRES_PER_CUBIC_FOOT / 1e6),
    linear('kWh/m³', ['kwh/m3', 'kwh/m³'], 3.6),
  ],
  hardness: [
    linear('mmol/L', ['mmol/l', 'mol/m3'], 1),
    linear('°dH', ['dh', '°dh'], 1 / 5.608),
    linear('gpg', ['gpg', 'gr/gal'], 17.118061 / 100.0869),
    linear('mg/L CaCO₃', ['mg/l', 'ppm'], 1 / 100.0869),
    linear('°fH', ['fh', '°fh'], 10 / 100.0869),
  ],
  concentration: [linear('mg/L', ['mg/l', 'ppm'], 1)],
  duration: [linear('s', ['s', 'sec', 'secs', 'seconds'], 1), linear('min', ['min', 'mins', 'minutes'], 60)],
  share: [linear('%', ['%', 'pct', 'vol%', '% vol', '%vol'], 1)],
  ppm: [linear('ppm', ['ppm'], 1)],
  conductivity: [linear('µS/cm', ['us/cm', 'µs/cm'], 1), linear('mS/cm', ['ms/cm'], 1000)],
  current: [linear('µA', ['ua', 'µa', 'μa'], 1)],
  voltage: [linear('V', ['v', 'volt'], 1)],
  speed: [linear('rpm', ['rpm', 'r/min', 'min-1'], 1)],
  count: [linear('', ['x', 'turns', 'turn', 'rev'], 1)],
  ph: [linear('', ['ph'], 1)],
};

/** Quantities whose key carries a unit other than its dimension's first. */
const OWN_UNITS: Partial<Record<QuantityKey, readonly [EntryUnit, ...EntryUnit[]]>> = {
  tightnessMinutes: [linear('min', ['min', 'mins', 'minutes'], 1), linear('h', ['h', 'hours'], 60)],
  typedGasRateM3PerH: [
    linear('m³/h', ['m3/h'], 1),
    linear('ft³/h', ['cfh', 'ft3/h', 'cf/h'], CUBIC_METRES_PER_CUBIC_FOOT),
  ],
};

export function entryUnits(key: QuantityKey): readonly [EntryUnit, ...EntryUnit[]] {
  return OWN_UNITS[key] ?? ENTRY_UNITS[quantitySpec(key).dimension];
}
