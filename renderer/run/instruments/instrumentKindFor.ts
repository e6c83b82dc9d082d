/** Which kind of instrument a quantity is read with; null when the boiler's own display, a dial or the eye gives it. */
import type { RecordedInstrument } from '../../../domain/procedure/runRecord.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';

export type InstrumentKind = RecordedInstrument['kind'];

const KINDS: Partial<Record<QuantityKey, InstrumentKind>> = {
  o2DryVolPct: 'analyser',
  co2DryVolPct: 'analyser',
  coPpm: 'analyser',
  coAirFreePpm: 'analyser',
  flueGasC: 'analyser',
  intakeAirC: 'analyser',
  freshAirO2VolPct: 'analyser',
  freshAirCo2VolPct: 'analyser',
  freshAirCoPpm: 'analyser',
  roomCoPpm: 'analyser',
  intakeO2VolPct: 'analyser',
  inletPressureMbarG: 'manometer',
  burnerPressureMbarG: 'manometer',
  tightnessPressureMbarG: 'manometer',
  tightnessDropMbar: 'manometer',
  meterSeconds: 'stopwatch',
  supplyC: 'thermometer',
  returnC: 'thermometer',
  deltaTK: 'thermometer',
  floorSurfaceC: 'thermometer',
  manifoldSupplyC: 'thermometer',
  outdoorC: 'thermometer',
  coldInletC: 'thermometer',
  hotOutletC: 'thermometer',
  mixedOutletC: 'thermometer',
  waterPh: 'water-test',
  hardnessMmolPerL: 'water-test',
  conductivityUsPerCm: 'water-test',
  chlorideMgPerL: 'water-test',
  inhibitorPct: 'water-test',
  glycolPct: 'water-test',
  condensateOutletPh: 'water-test',
  supplyVoltageV: 'multimeter',
};

export function instrumentKindFor(quantity: QuantityKey): InstrumentKind | null {
  return KINDS[quantity] ?? null;
}
