/**
 * The catalogue of everything that can be read, typed or set on a job. A quantity's key names its basis and its unit, so
 * that a stored number can be understood without looking anything up: `inletPressureMbarG` is millibar above ambient.
 */

/** What can be converted into what. Temperature points and differences are different kinds on purpose. */
export type Dimension =
  | 'temperature'
  | 'temperature-difference'
  | 'gas-pressure'
  | 'system-pressure'
  | 'power'
  | 'flow'
  | 'length'
  | 'volume'
  | 'gas-volume'
  | 'heating-value'
  | 'hardness'
  | 'concentration'
  | 'duration'
  | 'share'
  | 'ppm'
  | 'conductivity'
  | 'current'
  | 'voltage'
  | 'speed'
  | 'count'
  | 'ph';

export type QuantitySpec = {
  readonly dimension: Dimension;
  /** What a person reads beside the box. */
  readonly label: string;
  /** Physically possible values in the key's own unit: outside is a typing or unit mistake, never a measurement. */
  readonly possible: readonly [min: number, max: number];
  /** Decimals shown in the key's own unit. */
  readonly decimals: number;
};

function q(dimension: Dimension, label: string, possible: readonly [number, number], decimals: number): QuantitySpec {
  return { dimension, label, possible, decimals };
}

export const QUANTITIES = {
  // combustion, dry flue gas as the analyser shows it
  o2DryVolPct: q('share', 'O₂', [0, 21], 1),
  co2DryVolPct: q('share', 'CO₂', [0, 20], 1),
  coPpm: q('ppm', 'CO as measured', [0, 40_000], 0),
  coAirFreePpm: q('ppm', 'CO air-free', [0, 400_000], 0),
  /** The ratio as the analyser shows it, ppm over ppm. */
  coCo2Ratio: q('count', 'CO/CO₂ ratio as shown', [0, 1], 4),
  flueGasC: q('temperature', 'Flue gas', [-20, 600], 1),
  intakeAirC: q('temperature', 'Intake air', [-40, 60], 1),
  // analyser check in clean outside air
  freshAirO2VolPct: q('share', 'O₂ in fresh air', [15, 25], 1),
  freshAirCo2VolPct: q('share', 'CO₂ in fresh air', [0, 5], 2),
  freshAirCoPpm: q('ppm', 'CO in fresh air', [-50, 1000], 0),
  roomCoPpm: q('ppm', 'CO in the room', [0, 2000], 0),
  intakeO2VolPct: q('share', 'O₂ in the intake air', [0, 25], 1),
  // gas
  inletPressureMbarG: q('gas-pressure', 'Gas inlet pressure', [0, 500], 1),
  burnerPressureMbarG: q('gas-pressure', 'Burner pressure', [-5, 100], 2),
  tightnessPressureMbarG: q('gas-pressure', 'Tightness test pressure', [0, 1000], 1),
  tightnessDropMbar: q('gas-pressure', 'Pressure drop in the test', [0, 100], 2),
  tightnessMinutes: q('duration', 'Test time', [0, 1440], 0),
  meterDialM3: q('gas-volume', 'Meter dial, one turn', [0.0005, 10], 4),
  meterTurns: q('count', 'Turns timed', [0, 1000], 1),
  meterSeconds: q('duration', 'Time', [0, 3600], 1),
  typedGasRateM3PerH: q('gas-volume', 'Gas rate as worked out by hand', [0, 1000], 2),
  heatingValueMjPerM3: q('heating-value', 'Heating value, gross', [5, 160], 2),
  tankFillPct: q('share', 'Tank level', [0, 100], 0),
  // water side
  systemPressureBarG: q('system-pressure', 'System pressure', [0, 16], 2),
  vesselPreChargeBarG: q('system-pressure', 'Vessel pre-charge', [0, 10], 2),
  reliefSettingBarG: q('system-pressure', 'Relief valve setting', [0.5, 16], 2),
  supplyC: q('temperature', 'Supply water', [0, 120], 1),
  returnC: q('temperature', 'Return water', [0, 115], 1),
  systemFlowLPerMin: q('flow', 'Water flow', [0, 2000], 1),
  supplySetpointC: q('temperature', 'Supply setting', [15, 100], 0),
  deltaTK: q('temperature-difference', 'Supply minus return', [-60, 60], 1),
  floorSurfaceC: q('temperature', 'Floor surface', [0, 60], 1),
  manifoldSupplyC: q('temperature', 'Supply at the manifold', [0, 100], 1),
  outdoorC: q('temperature', 'Outdoor temperature', [-50, 55], 1),
  displayOutdoorC: q('temperature', 'Outdoor temperature as displayed', [-50, 60], 1),
  resetDesignOutdoorC: q('temperature', 'Reset curve: coldest outdoor', [-50, 20], 0),
  resetDesignSupplyC: q('temperature', 'Reset curve: supply at coldest', [20, 95], 0),
  resetMildOutdoorC: q('temperature', 'Reset curve: mildest outdoor', [0, 30], 0),
  resetMildSupplyC: q('temperature', 'Reset curve: supply at mildest', [15, 80], 0),
  warmWeatherShutdownC: q('temperature', 'Warm-weather shutdown', [5, 35], 0),
  // hot water
  hotWaterFlowLPerMin: q('flow', 'Hot water flow', [0, 200], 1),
  coldInletC: q('temperature', 'Cold water in', [0, 40], 1),
  hotOutletC: q('temperature', 'Hot water out', [0, 100], 1),
  mixedOutletC: q('temperature', 'Mixed water at the tap', [0, 100], 1),
  storeC: q('temperature', 'Store', [0, 100], 0),
  // water quality
  waterPh: q('ph', 'pH', [0, 14], 1),
  hardnessMmolPerL: q('hardness', 'Hardness', [0, 10], 2),
  conductivityUsPerCm: q('conductivity', 'Conductivity', [0, 10_000], 0),
  chlorideMgPerL: q('concentration', 'Chloride', [0, 2000], 0),
  inhibitorPct: q('share', 'Inhibitor', [0, 20], 1),
  glycolPct: q('share', 'Glycol', [0, 70], 0),
  // electrical and burner
  supplyVoltageV: q('voltage', 'Supply voltage', [0, 500], 0),
  flameCurrentUa: q('current', 'Flame current', [0, 200], 1),
  ignitionTries: q('count', 'Ignition tries', [0, 50], 0),
  cleanStarts: q('count', 'Clean starts in a row', [0, 50], 0),
  fanSpeedRpm: q('speed', 'Fan speed', [0, 20_000], 0),
  burnerPowerPct: q('share', 'Burner power as shown', [0, 110], 0),
  condensatePouredL: q('volume', 'Water poured into the trap', [0, 20], 1),
  condensateOutletPh: q('ph', 'Condensate outlet pH', [0, 14], 1),
  // site and plate
  ratedInputKw: q('power', 'Rated input', [0.5, 5000], 1),
  connectedLoadKw: q('power', 'Connected gas load', [0, 20_000], 1),
  altitudeM: q('length', 'Altitude', [-430, 5500], 0),
  systemHeightM: q('length', 'Height of the system above the gauge', [0, 150], 1),
  systemVolumeL: q('volume', 'Water in the system', [1, 100_000], 0),
  // counted evidence
  ventPhotos: q('count', 'Vent joints photographed', [0, 50], 0),
  inspectionHatches: q('count', 'Inspection hatches', [0, 50], 0),
} as const satisfies Record<string, QuantitySpec>;

export type QuantityKey = keyof typeof QUANTITIES;

export const QUANTITY_KEYS = Object.keys(QUANTITIES) as readonly QuantityKey[];

export function quantitySpec(key: QuantityKey): QuantitySpec {
  return QUANTITIES[key];
}

export function isQuantityKey(text: string): text is QuantityKey {
  return Object.hasOwn(QUANTITIES, text);
}
