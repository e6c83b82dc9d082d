/**
 * Which kind of instrument a quantity is read with. The kinds are what a heating technician carries (common practice, no
 * source): an instrument whose own data sheet names a quantity may read it whatever its kind, as an analyser with a pressure
 * port does.
 */
import type { RecordedInstrument } from '../../procedure/runRecord.ts';
import type { QuantityKey } from '../../quantity/quantities.ts';
import type { InstrumentKind } from '../../vocabulary/people.ts';

/** The kind reached for; null where the boiler's own display, a dial or the eye gives the number. */
export function instrumentKindFor(quantity: QuantityKey): InstrumentKind | null {
  return USUAL[quantity] ?? null;
}

/** Whether an instrument can have read it at all: a pH is not read with an analyser, nor litres with anything but the eye. */
export function canRead(
  instrument: Pick<RecordedInstrument, 'kind' | 'accuracy' | 'rangeMax'>,
  quantity: QuantityKey,
): boolean {
  const { kind, accuracy, rangeMax } = instrument;
  return (
    // What it is was not said: it may read anything.
    kind === 'other' ||
    kind === USUAL[quantity] ||
    (ALSO[quantity] ?? []).includes(kind) ||
    quantity in accuracy ||
    quantity in rangeMax
  );
}

const USUAL: Partial<Record<QuantityKey, InstrumentKind>> = {
  o2DryVolPct: 'analyser',
  co2DryVolPct: 'analyser',
  coPpm: 'analyser',
  coAirFreePpm: 'analyser',
  coCo2Ratio: 'analyser',
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

/** Not reached for first, but nothing is wrong with it: a gauge or a display usually says it, or a second kind can. */
const ALSO: Partial<Record<QuantityKey, readonly InstrumentKind[]>> = {
  flueGasC: ['thermometer'],
  intakeAirC: ['thermometer'],
  storeC: ['thermometer'],
  systemPressureBarG: ['manometer'],
  vesselPreChargeBarG: ['manometer'],
  tightnessMinutes: ['stopwatch'],
  hotWaterFlowLPerMin: ['stopwatch'],
  flameCurrentUa: ['multimeter'],
};
