/** The measures worksheets share, beside those of the readings. */
import {
  CUBIC_METRES_PER_CUBIC_FOOT,
  LITRES_PER_US_GALLON,
  METRES_PER_FOOT,
  MM_PER_INCH,
  PA_PER_FT_WC,
  PA_PER_IN_WC,
  PA_PER_KPA,
  PA_PER_MBAR,
  PA_PER_PSI,
  W_PER_BTU_PER_H,
  W_PER_M2_PER_BTU_PER_H_FT2,
} from '../../../domain/quantity/conversions.ts';
import { ENTRY_UNITS, linear } from '../../../domain/quantity/entryUnits.ts';
import type { Dimension } from '../../../domain/quantity/quantities.ts';
import type { Measure } from './measure.ts';

export const TEMPERATURE = ofDimension('temperature', '°F', 1);
export const TEMPERATURE_DIFFERENCE = ofDimension('temperature-difference', '°F', 1);
export const WHOLE_TEMPERATURE: Measure = { ...TEMPERATURE, decimals: 0 };
export const WHOLE_DIFFERENCE: Measure = { ...TEMPERATURE_DIFFERENCE, decimals: 0 };
export const GAS_PRESSURE = ofDimension('gas-pressure', 'in w.c.', 1);
export const SYSTEM_PRESSURE = ofDimension('system-pressure', 'psi', 2);
export const POWER = ofDimension('power', 'Btu/h');
export const FLOW = ofDimension('flow', 'US gpm');
export const LENGTH = ofDimension('length', 'ft');
export const VOLUME = ofDimension('volume', 'US gal');
export const HARDNESS = ofDimension('hardness', 'gpg');
export const HEATING_VALUE = ofDimension('heating-value', 'Btu/ft³');
export const DURATION = ofDimension('duration', 's');
export const SHARE = ofDimension('share', '%');
export const PPM: Measure = { ...ofDimension('ppm', 'ppm'), decimals: 0 };

export const PLAIN: Measure = { dimension: 'count', units: [linear('', [], 1)] };
export const PERCENT_FINE: Measure = { ...SHARE, decimals: 1 };
export const LAMBDA: Measure = { ...PLAIN, decimals: 2 };
export const PH: Measure = { dimension: 'ph', units: ENTRY_UNITS.ph, decimals: 1 };
export const WEEKS: Measure = { dimension: null, units: [linear('weeks', ['week', 'w'], 1)], decimals: 0 };
export const MONTHS: Measure = { dimension: null, units: [linear('months', ['month'], 1)], decimals: 0 };
export const TIMES: Measure = { dimension: null, units: [linear('times', ['x', '×'], 1)], decimals: 0 };

export const GAS_RATE: Measure = {
  dimension: null,
  units: [linear('m³/h', ['m3/h'], 1), linear('ft³/h', ['cfh', 'ft3/h', 'cf/h'], CUBIC_METRES_PER_CUBIC_FOOT)],
  us: 'ft³/h',
};
/** Air moves in the trade's cubic feet per minute. */
export const AIR_RATE: Measure = {
  dimension: null,
  units: [linear('m³/h', ['m3/h'], 1), linear('ft³/min', ['cfm', 'ft3/min'], 60 * CUBIC_METRES_PER_CUBIC_FOOT)],
  us: 'ft³/min',
};
export const ABSOLUTE_PRESSURE: Measure = {
  dimension: null,
  units: [
    linear('kPa abs', ['kpa', 'kpaa'], 1),
    linear('psia', ['psi'], PA_PER_PSI / PA_PER_KPA),
    linear('mbar abs', ['mbar'], 0.1),
  ],
  us: 'psia',
};
/** A drop over a pipe, in kPa for the domain. */
export const PIPE_DROP: Measure = {
  dimension: null,
  units: [
    linear('kPa', [], 1),
    linear('mbar', ['mb', 'hpa'], PA_PER_MBAR / PA_PER_KPA),
    linear('in w.c.', ['"wc', '"w.c.', 'inwc', 'in wc', 'in', '"'], PA_PER_IN_WC / PA_PER_KPA),
    linear('psi', ['psig'], PA_PER_PSI / PA_PER_KPA),
  ],
  us: 'in w.c.',
};
export const DIAMETER: Measure = {
  dimension: null,
  units: [linear('mm', [], 1), linear('in', ['"', 'inch', 'inches'], MM_PER_INCH)],
  us: 'in',
};
export const VELOCITY: Measure = {
  dimension: null,
  units: [linear('m/s', [], 1), linear('ft/s', ['fps'], METRES_PER_FOOT)],
  us: 'ft/s',
};
export const FRICTION: Measure = {
  dimension: null,
  units: [linear('Pa/m', [], 1), linear('in w.c. per 100 ft', [], PA_PER_IN_WC / (100 * METRES_PER_FOOT))],
  us: 'in w.c. per 100 ft',
};
export const HEAD_LOSS: Measure = {
  dimension: null,
  units: [linear('kPa', [], 1), linear('ft w.c.', [], PA_PER_FT_WC / PA_PER_KPA)],
  us: 'ft w.c.',
};
/** Output of an emitter, in W for the domain. */
export const EMITTER_POWER: Measure = {
  dimension: null,
  units: [linear('W', [], 1), linear('Btu/h', ['btu', 'btuh'], W_PER_BTU_PER_H), linear('kW', [], 1000)],
  us: 'Btu/h',
};
export const AREA_POWER: Measure = {
  dimension: null,
  units: [linear('W/m²', ['w/m2'], 1), linear('Btu/h·ft²', ['btu/hft2'], W_PER_M2_PER_BTU_PER_H_FT2)],
  us: 'Btu/h·ft²',
};
/** Output of an emitter by its length. */
export const LINE_POWER: Measure = {
  dimension: null,
  units: [linear('W/m', ['w/m'], 1), linear('Btu/h·ft', ['btu/hft'], W_PER_BTU_PER_H / METRES_PER_FOOT)],
  us: 'Btu/h·ft',
};
export const MG_PER_KWH: Measure = { dimension: null, units: [linear('mg/kWh', [], 1)] };
export const MG_PER_M3: Measure = { dimension: null, units: [linear('mg/m³', ['mg/m3'], 1)] };
export const LB_PER_MMBTU: Measure = { dimension: null, units: [linear('lb per million Btu', [], 1)] };
export const LITRES_PER_HOUR: Measure = {
  dimension: null,
  units: [linear('L/h', ['l/h'], 1), linear('US gal/h', ['gal/h', 'gph'], LITRES_PER_US_GALLON)],
  us: 'US gal/h',
};
export const LITRES_PER_KW: Measure = { dimension: null, units: [linear('L/kW', ['l/kw'], 1)] };
export const GRAMS: Measure = { dimension: null, units: [linear('g', [], 1)] };
export const GRAMS_PER_KWH: Measure = { dimension: null, units: [linear('g/kWh', [], 1)] };
export const HARDNESS_DH: Measure = { dimension: null, units: [linear('°dH', [], 1)], decimals: 1 };

function ofDimension(dimension: Dimension, us: string, decimals?: number): Measure {
  const measure: Measure = { dimension, units: ENTRY_UNITS[dimension], us };
  return decimals === undefined ? measure : { ...measure, decimals };
}
