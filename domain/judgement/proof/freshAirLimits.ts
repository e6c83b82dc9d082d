/** What an analyser must show in clean outside air before its readings prove anything. */
import type { QuantityKey } from '../../quantity/quantities.ts';

export type FreshAirLimit = {
  readonly quantity: QuantityKey;
  readonly min: number;
  readonly max: number;
  readonly source: string;
};

export const FRESH_AIR_LIMITS: readonly FreshAirLimit[] = [
  {
    quantity: 'freshAirO2VolPct',
    min: 20.6,
    max: 21.2,
    source: 'clean air 20.9 % ± 0.3; a maker’s sheet accepts 20.6',
  },
  { quantity: 'freshAirCoPpm', min: 0, max: 3, source: 'common practice: 0–3 ppm after zeroing' },
  { quantity: 'freshAirCo2VolPct', min: 0, max: 0.2, source: 'a maker’s sheet: below 0.2 %' },
];

/** Without these two the check was not made; CO2 is only looked at where the analyser shows it. */
export const NEEDED_IN_FRESH_AIR: readonly QuantityKey[] = ['freshAirO2VolPct', 'freshAirCoPpm'];
