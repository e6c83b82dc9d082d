import { fahrenheitToCelsius } from '../../quantity/conversions.ts';
import type { Celsius, Seconds } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

export type ScaldTime = {
  readonly waterC: Celsius;
  readonly seconds: Seconds;
  readonly who: 'adult' | 'child';
  readonly degree: 'second' | 'third' | 'not stated';
  readonly source: string;
};

const PRODUCT_SAFETY_NOTICE = 'CPSC tap-water scald notice';
const BURN_RESEARCH = 'time and temperature table of burn research';
const INDUSTRY_LEAFLET = 'industry leaflet';

function cpsc(waterF: number, seconds: number): ScaldTime {
  return { waterC: fahrenheitToCelsius(waterF), seconds, who: 'adult', degree: 'third', source: PRODUCT_SAFETY_NOTICE };
}

function research(waterC: number, secondDegreeS: number, thirdDegreeS: number): readonly ScaldTime[] {
  const common = { waterC, who: 'adult', source: BURN_RESEARCH } as const;
  return [
    { ...common, seconds: secondDegreeS, degree: 'second' },
    { ...common, seconds: thirdDegreeS, degree: 'third' },
  ];
}

function child(waterF: number, seconds: number): ScaldTime {
  return {
    waterC: fahrenheitToCelsius(waterF),
    seconds,
    who: 'child',
    degree: 'not stated',
    source: INDUSTRY_LEAFLET,
  };
}

/**
 * Published times in which hot water burns. Where sources disagree, all stand here and the lookup takes the shortest.
 *
 * Source   as each row says
 */
export const SCALD_TIMES: readonly ScaldTime[] = [
  cpsc(150, 2),
  cpsc(140, 6),
  cpsc(130, 30),
  cpsc(120, 5 * 60),
  ...research(60, 3, 5),
  ...research(55, 17, 30),
  ...research(51, 2 * 60, 4.2 * 60),
  ...research(49, 8 * 60, 10 * 60),
  ...research(48, 15 * 60, 20 * 60),
  ...research(45, 2 * 3600, 3 * 3600),
  child(150, 0.5),
  child(140, 1),
  child(133, 15),
  child(120, 4 * 60),
];

/** Usual highest temperature at a bathing outlet: 120 °F. */
export const USUAL_BATHING_LIMIT_C: Celsius = 49;

/** Outlet temperature to look for at a heater without a store. Common practice, no source. */
export const USUAL_OUTLET_C: readonly [least: Celsius, most: Celsius] = [48, 50];

/** Against legionella, for systems with a store: store hot, mix down. HSE HSG274 Part 2. */
export const STORED_WATER_C = {
  storeAtLeast: 60,
  outletAtLeastWithinAMinute: 50,
  healthcareOutletAtLeast: 55,
  coldBelow: 20,
} as const;

/**
 * Shortest published time in which water of this temperature burns someone, a child included: for warnings.
 *
 * Formula  the shortest time among all published rows up to the next temperature at or above the asked one: water is
 *          never said to take longer than any source says. Above the hottest row the time is at most that row's
 * Units    °C; s
 * Valid    45–100 °C; below the coolest published row an error: that is no statement that the water can't hurt
 * Source   `SCALD_TIMES`
 * Checked  tests/checks/hydronics/hotWaterRows.ts; tests/domain/hydronics/hotWater/scaldTimes.test.ts
 */
export function shortestScaldTime(at: { readonly waterC: Celsius }): Result<ScaldTime, OutOfRange> {
  const coolestC = Math.min(...SCALD_TIMES.map((row) => row.waterC));
  const refused = checkRange('waterC', at.waterC, coolestC, 100);
  if (refused) return err(refused);
  const rowsAtOrAbove = SCALD_TIMES.filter((row) => row.waterC >= at.waterC);
  // Above the hottest row every row counts: water hotter than a row burns at least as fast.
  const nextC = rowsAtOrAbove.length === 0 ? at.waterC : Math.min(...rowsAtOrAbove.map((row) => row.waterC));
  const shortest = SCALD_TIMES.filter((row) => row.waterC <= nextC).reduce((best, row) =>
    row.seconds < best.seconds ? row : best,
  );
  return ok(shortest);
}
