/** Which quantities a rule is about. */
import type { QuantityKey } from '../quantity/quantities.ts';

/** Read by the analyser in the flue. */
export const FLUE_GAS: ReadonlySet<QuantityKey> = new Set([
  'o2DryVolPct',
  'co2DryVolPct',
  'coPpm',
  'coAirFreePpm',
  'coCo2Ratio',
  'flueGasC',
]);

/** What only a licensed person may measure, whatever step of a sheet asks for it: in the flue, and on the gas side. */
export const GAS_RESULTS: ReadonlySet<QuantityKey> = new Set([
  ...FLUE_GAS,
  'inletPressureMbarG',
  'burnerPressureMbarG',
  'tightnessPressureMbarG',
  'tightnessDropMbar',
]);

/** A number that only an instrument can give: without knowing which, it proves nothing. */
export const NEEDS_INSTRUMENT: ReadonlySet<QuantityKey> = new Set([
  ...FLUE_GAS,
  'freshAirO2VolPct',
  'freshAirCo2VolPct',
  'freshAirCoPpm',
  'roomCoPpm',
  'intakeO2VolPct',
  'inletPressureMbarG',
  'burnerPressureMbarG',
  'tightnessPressureMbarG',
  'tightnessDropMbar',
]);

/** Raw material of a computation, or a fact about the site: nobody expects a limit on the sheet for it. */
export const NOT_JUDGED_ALONE: ReadonlySet<QuantityKey> = new Set([
  'freshAirO2VolPct',
  'freshAirCo2VolPct',
  'freshAirCoPpm',
  'intakeAirC',
  'coCo2Ratio',
  'tightnessMinutes',
  'meterDialM3',
  'meterTurns',
  'meterSeconds',
  'typedGasRateM3PerH',
  'heatingValueMjPerM3',
  'tankFillPct',
  'outdoorC',
  'displayOutdoorC',
  'resetDesignOutdoorC',
  'resetDesignSupplyC',
  'resetMildOutdoorC',
  'resetMildSupplyC',
  'warmWeatherShutdownC',
  'coldInletC',
  'ratedInputKw',
  'connectedLoadKw',
  'altitudeM',
  'systemHeightM',
  'systemVolumeL',
  'burnerPowerPct',
  'ventPhotos',
  'inspectionHatches',
]);
