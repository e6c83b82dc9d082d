/** Expansion vessels: E1–E14. */
import { liquidExpansion } from '../../../domain/hydronics/fluid/liquidExpansion.ts';
import { WATER } from '../../../domain/hydronics/fluid/systemFluid.ts';
import type { PipeMetal } from '../../../domain/hydronics/vessel/pipeGrowth.ts';
import { diaphragmTankVolume, plainTankVolume } from '../../../domain/hydronics/vessel/tankVolume.ts';
import { vesselFillWindow } from '../../../domain/hydronics/vessel/vesselFillWindow.ts';
import { vesselHotPressure, vesselWaterHeld } from '../../../domain/hydronics/vessel/vesselGas.ts';
import { vesselSizeToChoose, vesselVolumeNeeded } from '../../../domain/hydronics/vessel/vesselVolumeNeeded.ts';
import { waterReserve } from '../../../domain/hydronics/vessel/waterReserve.ts';
import {
  fahrenheitDifferenceToKelvinDifference,
  fahrenheitToCelsius,
  litresToUsGallons,
  psiToBar,
  usGallonsToLitres,
} from '../../../domain/quantity/conversions.ts';
import { unwrap } from '../../../domain/result.ts';
import type { CheckRow } from '../checkRow.ts';
import { computed, fromMemory, percent, published } from './rowKinds.ts';

const HANDBOOK = 'ASHRAE HVAC Systems and Equipment, expansion-tank example';
const ASHRAE = 'ASHRAE form on IAPWS R7-97(2012)';
const EUROPEAN = 'EN 12828 form on IAPWS R7-97(2012)';
const GAS_LAW = 'gas law';

/** The handbook's example: 40 → 220 °F by its own specific volumes. */
const handbookDuty = {
  systemVolumeL: usGallonsToLitres(3000),
  expansionFraction: 0.01677 / 0.01602 - 1,
  temperatureRiseK: fahrenheitDifferenceToKelvinDifference(180),
  pipeMetal: 'steel',
  coldPressureBarAbs: psiToBar(24.7),
  hotPressureBarAbs: psiToBar(39.7),
} as const;

const ATMOSPHERE_PSI = 14.696;

function thirtyGallonsUsGal(atmospherePsi: number, pipeMetal: PipeMetal | null): number {
  return litresToUsGallons(
    unwrap(
      diaphragmTankVolume({
        systemVolumeL: usGallonsToLitres(30),
        expansionFraction: expansion(fahrenheitToCelsius(50), fahrenheitToCelsius(180)),
        temperatureRiseK: fahrenheitDifferenceToKelvinDifference(130),
        pipeMetal,
        coldPressureBarAbs: psiToBar(12 + atmospherePsi),
        hotPressureBarAbs: psiToBar(27 + atmospherePsi),
      }),
    ),
  );
}
function expansion(coldC: number, hotC: number): number {
  return unwrap(liquidExpansion({ fluid: WATER, coldC, hotC }));
}
function duty(systemVolumeL: number, hotC: number, preChargeBarG: number) {
  return { systemVolumeL, expansionFraction: expansion(10, hotC), preChargeBarG, endPressureBarG: 2.5 };
}
function hotPressure(
  vesselVolumeL: number,
  preChargeBarG: number,
  coldPressureBarG: number,
  systemVolumeL: number,
  hotC: number,
): number {
  const expandedWaterL = systemVolumeL * expansion(10, hotC);
  return unwrap(vesselHotPressure({ vesselVolumeL, preChargeBarG, coldPressureBarG, expandedWaterL }));
}
function twelveLitresHold(pressureBarG: number): number {
  return unwrap(vesselWaterHeld({ vesselVolumeL: 12, preChargeBarG: 0.75, pressureBarG }));
}
const e9Window = () => unwrap(vesselFillWindow({ ...duty(150, 80, 1), vesselVolumeL: 18, waterReserveL: 3 }));

export const vesselRows: readonly CheckRow[] = [
  fromMemory(
    published(
      'E1',
      '3000 gal, 0.01602 → 0.01677 ft³/lb, steel, 24.7 → 39.7 psia',
      'diaphragm tank, gal',
      344,
      1,
      HANDBOOK,
      () => litresToUsGallons(unwrap(diaphragmTankVolume(handbookDuty))),
    ),
  ),
  fromMemory(
    published('E2', 'same, plain closed tank, Pa 14.7 psia', 'tank, gal', 578, 1, HANDBOOK, () =>
      litresToUsGallons(unwrap(plainTankVolume({ ...handbookDuty, atmosphericPressureBarAbs: psiToBar(14.7) }))),
    ),
  ),
  computed(
    'E3.copper',
    '30 gal, 50 → 180 °F, 12 → 27 psig, copper',
    'diaphragm tank, gal',
    2.21,
    percent(1),
    ASHRAE,
    () => thirtyGallonsUsGal(ATMOSPHERE_PSI, 'copper'),
  ),
  computed('E3.no-pipe', 'same, ignoring the pipe', 'diaphragm tank, gal', 2.52, percent(1), ASHRAE, () =>
    thirtyGallonsUsGal(ATMOSPHERE_PSI, null),
  ),
  computed(
    'E4.volume',
    'E3 with gauge pressures taken for absolute',
    'wrong tank, gal',
    1.43,
    percent(1),
    'negative test',
    () => thirtyGallonsUsGal(0, 'copper'),
  ),
  computed(
    'E4.shortfall',
    'same',
    'too small by, %',
    35,
    1,
    'negative test',
    () => 100 * (1 - thirtyGallonsUsGal(0, 'copper') / thirtyGallonsUsGal(ATMOSPHERE_PSI, 'copper')),
  ),
  ...(
    [
      [50, 1.18],
      [60, 1.68],
      [70, 2.24],
      [80, 2.87],
      [90, 3.56],
    ] as const
  ).map(([hotC, expected]) =>
    computed(
      `E5.${hotC}`,
      `water, 10 → ${hotC} °C`,
      'expansion, %',
      expected,
      0.01,
      'IAPWS R7-97(2012)',
      () => 100 * expansion(10, hotC),
    ),
  ),
  computed(
    'E6.needed',
    '150 L, 10 → 80 °C, p0 1.0, pe 2.5, reserve 3 L',
    'vessel needed, L',
    17.0,
    percent(1),
    EUROPEAN,
    () => unwrap(vesselVolumeNeeded({ ...duty(150, 80, 1), waterReserveL: 3 })),
  ),
  computed(
    'E6.choose',
    'same',
    'vessel to choose, L',
    18,
    0,
    EUROPEAN,
    () => unwrap(vesselSizeToChoose(duty(150, 80, 1))) ?? Number.NaN,
  ),
  computed('E6.reserve', 'same, vessel of 18 L', 'reserve, L', 3, 0, 'EN 12828, from memory', () =>
    unwrap(waterReserve({ systemVolumeL: 150, vesselVolumeL: 18 })),
  ),
  computed(
    'E7.needed',
    '250 L, 10 → 70 °C, p0 1.2, pe 2.5, reserve 3 L',
    'vessel needed, L',
    23.2,
    percent(1),
    EUROPEAN,
    () => unwrap(vesselVolumeNeeded({ ...duty(250, 70, 1.2), waterReserveL: 3 })),
  ),
  computed(
    'E7.choose',
    'same',
    'vessel to choose, L',
    25,
    0,
    EUROPEAN,
    () => unwrap(vesselSizeToChoose(duty(250, 70, 1.2))) ?? Number.NaN,
  ),
  computed(
    'E8',
    'built-in 8 L, 90 L, 10 → 80 °C, p0 0.75, pe 2.5, reserve 20 %',
    'vessel needed, L',
    8.4,
    percent(1),
    EUROPEAN,
    () =>
      unwrap(
        vesselVolumeNeeded({
          ...duty(90, 80, 0.75),
          waterReserveL: unwrap(waterReserve({ systemVolumeL: 90, vesselVolumeL: 8 })),
        }),
      ),
  ),
  computed('E9.lowest', '18 L vessel on E6', 'lowest fill, bar', 1.4, 0.02, EUROPEAN, () => e9Window().lowestBarG),
  computed('E9.highest', '18 L vessel on E6', 'highest fill, bar', 1.47, 0.02, EUROPEAN, () => e9Window().highestBarG),
  computed('E10', '12 L, p0 0.75, cold 1.0 bar g, 90 L, 10 → 70 °C', 'hot pressure, bar g', 1.48, 0.03, GAS_LAW, () =>
    hotPressure(12, 0.75, 1, 90, 70),
  ),
  computed('E11', 'as E10, pre-charge lost to 0.2 bar', 'hot pressure, bar g', 1.78, 0.03, GAS_LAW, () =>
    hotPressure(12, 0.2, 1, 90, 70),
  ),
  computed('E12', '8 L, p0 0.75, cold 1.2, 110 L, 10 → 80 °C', 'hot pressure, bar g', 3.37, 0.05, GAS_LAW, () =>
    hotPressure(8, 0.75, 1.2, 110, 80),
  ),
  computed('E13.full', '12 L, p0 0.75 at 1.2 bar', 'water held, L', 2.44, 0.03, GAS_LAW, () => twelveLitresHold(1.2)),
  computed('E13.less', '12 L, p0 0.75 at 0.9 bar', 'water held, L', 0.94, 0.03, GAS_LAW, () => twelveLitresHold(0.9)),
  computed(
    'E13.loss',
    'between the two',
    'loss, L',
    1.5,
    0.03,
    GAS_LAW,
    () => twelveLitresHold(1.2) - twelveLitresHold(0.9),
  ),
  computed('E14', '12 L, 0.75 → 2.5 bar g', 'acceptance, L', 5.98, 0.03, GAS_LAW, () => twelveLitresHold(2.5)),
];
