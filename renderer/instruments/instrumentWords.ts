/** Kinds of instruments, and the quantities each is usually read for. */
import type { QuantityKey } from '../../domain/quantity/quantities.ts';
import type { Instrument } from '../../electron/contract/people.ts';

export const INSTRUMENT_WORDS: Readonly<Record<Instrument['kind'], string>> = {
  analyser: 'flue-gas analyser',
  manometer: 'manometer',
  thermometer: 'thermometer',
  'water-test': 'water test kit',
  stopwatch: 'stopwatch',
  multimeter: 'multimeter',
  other: 'other',
};

/** Where the sentence says already what it measures. */
export const INSTRUMENT_SHORT: Readonly<Record<Instrument['kind'], string>> = {
  ...INSTRUMENT_WORDS,
  analyser: 'analyser',
  other: 'instrument',
};

/** Offered as rows of the data sheet; a row left empty is not kept. */
export const USUAL_QUANTITIES: Readonly<Record<Instrument['kind'], readonly QuantityKey[]>> = {
  analyser: [
    'o2DryVolPct',
    'co2DryVolPct',
    'coPpm',
    'flueGasC',
    'intakeAirC',
    'roomCoPpm',
    // With a pressure port it takes the place of a manometer, for what its data sheet names.
    'inletPressureMbarG',
    'burnerPressureMbarG',
    'tightnessPressureMbarG',
    'tightnessDropMbar',
  ],
  manometer: ['inletPressureMbarG', 'burnerPressureMbarG', 'tightnessPressureMbarG', 'systemPressureBarG'],
  thermometer: ['supplyC', 'returnC', 'hotOutletC', 'coldInletC', 'floorSurfaceC'],
  'water-test': ['waterPh', 'hardnessMmolPerL', 'conductivityUsPerCm', 'chlorideMgPerL', 'inhibitorPct', 'glycolPct'],
  stopwatch: ['meterSeconds'],
  multimeter: ['supplyVoltageV', 'flameCurrentUa'],
  other: [],
};
