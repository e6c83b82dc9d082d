/** Which heading a reading stands under. A quantity nobody placed still gets printed, under the last one. */

export const READING_GROUPS = [
  'Analyser in fresh air, and the room',
  'Gas pressures and meter',
  'System water and pressure',
  'Water quality',
  'Hot water',
  'Controls',
  'Burner and power',
  'Other readings',
] as const;
export type ReadingGroup = (typeof READING_GROUPS)[number];

const QUANTITIES: Readonly<Record<ReadingGroup, readonly string[]>> = {
  'Analyser in fresh air, and the room': [
    'freshAirO2VolPct',
    'freshAirCo2VolPct',
    'freshAirCoPpm',
    'roomCoPpm',
    'intakeO2VolPct',
  ],
  'Gas pressures and meter': [
    'tightnessPressureMbarG',
    'tightnessDropMbar',
    'tightnessMinutes',
    'inletPressureMbarG',
    'burnerPressureMbarG',
    'meterDialM3',
    'meterTurns',
    'meterSeconds',
    'typedGasRateM3PerH',
    'heatingValueMjPerM3',
    'tankFillPct',
  ],
  'System water and pressure': [
    'systemPressureBarG',
    'vesselPreChargeBarG',
    'reliefSettingBarG',
    'supplyC',
    'returnC',
    'deltaTK',
    'systemFlowLPerMin',
    'condensatePouredL',
  ],
  'Water quality': [
    'waterPh',
    'hardnessMmolPerL',
    'conductivityUsPerCm',
    'chlorideMgPerL',
    'inhibitorPct',
    'glycolPct',
    'condensateOutletPh',
  ],
  'Hot water': ['hotWaterFlowLPerMin', 'coldInletC', 'hotOutletC', 'mixedOutletC', 'storeC'],
  Controls: [
    'supplySetpointC',
    'resetDesignOutdoorC',
    'resetDesignSupplyC',
    'resetMildOutdoorC',
    'resetMildSupplyC',
    'warmWeatherShutdownC',
    'outdoorC',
    'displayOutdoorC',
    'manifoldSupplyC',
    'floorSurfaceC',
  ],
  'Burner and power': [
    'supplyVoltageV',
    'flameCurrentUa',
    'ignitionTries',
    'cleanStarts',
    'fanSpeedRpm',
    'burnerPowerPct',
  ],
  'Other readings': [],
};

export function readingGroup(quantity: string): ReadingGroup {
  return READING_GROUPS.find((group) => QUANTITIES[group].includes(quantity)) ?? 'Other readings';
}
