/** Radiators, baseboard and floors: O1–O10. */
import { bareBaseboardOutput, usEmitterFactor } from '../../../domain/hydronics/emitters/baseboardOutput.ts';
import { floorOutput, floorSurfaceOverRoom } from '../../../domain/hydronics/emitters/floorOutput.ts';
import {
  logarithmicMeanDifference,
  radiatorFactor,
  radiatorOutput,
} from '../../../domain/hydronics/emitters/radiatorOutput.ts';
import {
  fahrenheitDifferenceToKelvinDifference,
  fahrenheitToCelsius,
  W_PER_M2_PER_BTU_PER_H_FT2,
} from '../../../domain/quantity/conversions.ts';
import { unwrap } from '../../../domain/result.ts';
import type { CheckRow } from '../checkRow.ts';
import { computed, fromMemory, published } from './rowKinds.ts';

const EN_442 = 'EN 442 explanation of a radiator trade page';
const ASHRAE_EXPONENT = 'exponent of ASHRAE';
const EN_1264 = 'EN 1264 curve as printed in trade journals';

const wideSpread = { ratedOutputW: 1, supplyC: 55, returnC: 35, roomC: 20 } as const;
const arithmeticShare = () => unwrap(radiatorOutput({ ...wideSpread, mean: 'arithmetic' }));
const chosenShare = () => unwrap(radiatorOutput(wideSpread));

export const emitterRows: readonly CheckRow[] = [
  published('O1.60', '(60/50)^1.3', 'factor', 1.267, 0.001, EN_442, () =>
    unwrap(radiatorFactor({ meanDifferenceK: 60 })),
  ),
  ...(
    [
      [40, 0.748],
      [30, 0.515],
      [20, 0.304],
    ] as const
  ).map(([meanDifferenceK, expected]) =>
    computed(`O1.${meanDifferenceK}`, `(${meanDifferenceK}/50)^1.3`, 'factor', expected, 0.001, EN_442, () =>
      unwrap(radiatorFactor({ meanDifferenceK })),
    ),
  ),
  computed('O2', '1000 W (75/65/20) at 55/45/20, n 1.3', 'output, W', 515, 1, EN_442, () =>
    unwrap(radiatorOutput({ ratedOutputW: 1000, supplyC: 55, returnC: 45, roomC: 20 })),
  ),
  computed('O3.arithmetic', '55/35/20, arithmetic 25 K', 'factor', 0.406, 0.002, 'formula', arithmeticShare),
  computed('O3.logarithmic', '55/35/20, logarithmic 23.60 K ÷ 49.83', 'factor', 0.379, 0.002, 'formula', chosenShare),
  computed('O3.lmtd', '55/35/20', 'logarithmic mean, K', 23.6, 0.005, 'formula', () =>
    unwrap(logarithmicMeanDifference({ supplyC: 55, returnC: 35, roomC: 20 })),
  ),
  computed(
    'O3.excess',
    '55/35/20',
    'arithmetic too high by, %',
    7,
    0.5,
    'formula',
    () => 100 * (arithmeticShare() / chosenShare() - 1),
  ),
  computed('O4', '75/65/20', 'logarithmic mean, K', 49.83, 0.01, 'formula', () =>
    unwrap(logarithmicMeanDifference({ supplyC: 75, returnC: 65, roomC: 20 })),
  ),
  ...(
    [
      ['O5', 'baseboard', 160, 0.78],
      ['O5', 'baseboard', 140, 0.57],
      ['O5', 'baseboard', 120, 0.38],
      ['O6', 'convector', 160, 0.76],
      ['O6', 'convector', 140, 0.55],
      ['O6', 'convector', 120, 0.35],
    ] as const
  ).map(([id, kind, averageF, expected]) =>
    fromMemory(
      computed(
        `${id}.${averageF}`,
        `${kind}, ${averageF} °F average, 65 °F air`,
        'factor',
        expected,
        0.01,
        ASHRAE_EXPONENT,
        () => unwrap(usEmitterFactor({ kind, averageWaterC: fahrenheitToCelsius(averageF) })),
      ),
    ),
  ),
  computed('O7', 'rated 580 Btu/h·ft incl. 15 %', 'bare output, Btu/h·ft', 504, 1, 'trade articles', () =>
    unwrap(bareBaseboardOutput({ ratedOutput: 580 })),
  ),
  computed('O8.5', 'surface − room 5 K', 'q, W/m²', 52.4, 0.2, EN_1264, () =>
    unwrap(floorOutput({ surfaceOverRoomK: 5 })),
  ),
  published('O8.9', 'surface − room 9 K', 'q, W/m²', 100.0, 0.2, EN_1264, () =>
    unwrap(floorOutput({ surfaceOverRoomK: 9 })),
  ),
  published('O8.15', 'surface − room 15 K', 'q, W/m²', 175.4, 0.2, `${EN_1264} (175)`, () =>
    unwrap(floorOutput({ surfaceOverRoomK: 15 })),
  ),
  computed('O9', '50 W/m²', 'surface − room, K', 4.79, 0.02, EN_1264, () =>
    unwrap(floorSurfaceOverRoom({ outputWPerM2: 50 })),
  ),
  computed('O10.curve', '14.7 °F over the room', 'q, Btu/h·ft²', 28.5, 0.3, EN_1264, () => fourteenPointSeven()),
  // The chart's lines can't be read finer than half a unit.
  published('O10.chart', '14.7 °F over the room', 'q, Btu/h·ft²', 28, 0.6, 'radiant design manual, chart', () =>
    fourteenPointSeven(),
  ),
];

function fourteenPointSeven(): number {
  const surfaceOverRoomK = fahrenheitDifferenceToKelvinDifference(14.7);
  return unwrap(floorOutput({ surfaceOverRoomK })) / W_PER_M2_PER_BTU_PER_H_FT2;
}
