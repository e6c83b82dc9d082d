/** What a followed number is measured in: a quantity of the catalogue with its units, or a comparison that has none of its own. */
import type { QuantityKey } from '../quantity/quantities.ts';
import type { TrendQuantity } from './symptoms.ts';

/** null: a bare number that only says something beside another of its kind. */
export const TREND_UNITS: Readonly<Record<TrendQuantity, QuantityKey | null>> = {
  'delta-t': 'deltaTK',
  flow: null,
  output: 'ratedInputKw',
  'flue-over-return': 'deltaTK',
  'flue-temperature': 'flueGasC',
  'dynamic-inlet-pressure': 'inletPressureMbarG',
  'all-on-inlet-pressure': 'inletPressureMbarG',
  co2: 'co2DryVolPct',
  o2: 'o2DryVolPct',
  co: 'coPpm',
  'hot-water-flow': 'hotWaterFlowLPerMin',
  'hot-water-rise': 'deltaTK',
  'cold-pressure': 'systemPressureBarG',
  'hot-pressure': 'systemPressureBarG',
  'pressure-rise': 'systemPressureBarG',
  'relief-valve-wet': null,
  'make-up-never-needed': null,
  ph: 'waterPh',
  conductivity: 'conductivityUsPerCm',
  hardness: 'hardnessMmolPerL',
  'glycol-share': 'glycolPct',
  'neutraliser-outlet-ph': 'condensateOutletPh',
  'condensate-volume': null,
  'return-temperature': 'returnC',
};
