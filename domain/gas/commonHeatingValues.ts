/**
 * Heating values commonly seen in print, for use until the supplier's figure is known. Each keeps its source and its base:
 * a number without them must not decide anything.
 *
 * Units    gross, per m³ at 60 °F and 14.696 psia
 * Errors   natural gas runs from 26 to 45 MJ/m³ by place. Propane of 2516 Btu/ft³ is the ideal-gas figure; a metered cubic
 *          foot holds 1.8 % more
 * Checked  tests/checks/gas/meterTiming.test.ts
 */
import type { SiteFuelKey } from '../combustion/fuels.ts';
import { btuPerFt3ToMjPerM3 } from '../quantity/conversions.ts';

export type CommonHeatingValue = { readonly hhvMjPerM3: number; readonly source: string };

export const COMMON_HEATING_VALUES: Readonly<Record<Exclude<SiteFuelKey, 'heating-oil'>, CommonHeatingValue>> = {
  'natural-gas': { hhvMjPerM3: btuPerFt3ToMjPerM3(1026), source: '40 CFR 98 Table C-1' },
  propane: { hhvMjPerM3: btuPerFt3ToMjPerM3(2516), source: '40 CFR 98 Table C-1, ideal gas' },
  butane: { hhvMjPerM3: btuPerFt3ToMjPerM3(3260), source: 'computed, ideal gas' },
};
