/** Outdoor reset: R1–R11. */
import { outdoorForReturn, type ResetDesign, resetCurve } from '../../../domain/hydronics/reset/resetCurve.ts';
import { twoPointReset } from '../../../domain/hydronics/reset/twoPointReset.ts';
import { celsiusToFahrenheit, fahrenheitToCelsius } from '../../../domain/quantity/conversions.ts';
import { unwrap } from '../../../domain/result.ts';
import type { CheckRow } from '../checkRow.ts';
import { computed } from './rowKinds.ts';

const CURVE = 'set-point reset of an open Modelica buildings library';
const LINE = 'two-point line';

function design(supplyC: number, returnC: number, roomC: number, outdoorC: number, exponent: number): ResetDesign {
  return { designSupplyC: supplyC, designReturnC: returnC, designRoomC: roomC, designOutdoorC: outdoorC, exponent };
}
const radiators = design(75, 65, 20, -10, 1.3);
const floor = design(40, 33, 21, -12, 1.1);
const americanDesign = design(
  fahrenheitToCelsius(180),
  fahrenheitToCelsius(160),
  fahrenheitToCelsius(70),
  fahrenheitToCelsius(5),
  1.4,
);
const american = () => unwrap(resetCurve({ ...americanDesign, outdoorC: fahrenheitToCelsius(35) }));

type Point = Parameters<typeof resetCurve>[0];
function curveRows(
  id: string,
  inputs: string,
  point: Point,
  expected: { readonly load?: number; readonly supplyC: number; readonly returnC: number },
): readonly CheckRow[] {
  const at = () => unwrap(resetCurve(point));
  const water = [
    computed(`${id}.supply`, inputs, 'supply, °C', expected.supplyC, 0.1, CURVE, () => at().supplyC),
    computed(`${id}.return`, inputs, 'return, °C', expected.returnC, 0.1, CURVE, () => at().returnC),
  ];
  if (expected.load === undefined) return water;
  // The load share is printed to three decimals; 0.1 K of a 30 K span is not its tolerance.
  return [
    computed(`${id}.load`, inputs, 'share of the load', expected.load, 0.0005, CURVE, () => at().loadShare),
    ...water,
  ];
}
function twoPointF(outdoorF: number): number {
  return celsiusToFahrenheit(
    unwrap(
      twoPointReset({
        designOutdoorC: fahrenheitToCelsius(0),
        designSupplyC: fahrenheitToCelsius(180),
        warmOutdoorC: fahrenheitToCelsius(70),
        warmSupplyC: fahrenheitToCelsius(100),
        outdoorC: fahrenheitToCelsius(outdoorF),
      }),
    ),
  );
}
function condensingFromC(supplyC: number, returnC: number): number {
  const below = unwrap(outdoorForReturn({ ...design(supplyC, returnC, 20, -10, 1.3), returnBelowC: 55 }));
  return below.kind === 'above' ? below.outdoorC : Number.NaN;
}

export const resetRows: readonly CheckRow[] = [
  ...curveRows(
    'R1',
    '75/65/20, design −10, n 1.3, outdoor 5 °C',
    { ...radiators, outdoorC: 5 },
    { load: 0.5, supplyC: 51.8, returnC: 46.8 },
  ),
  ...curveRows(
    'R2',
    'same, outdoor 0 °C',
    { ...radiators, outdoorC: 0 },
    { load: 0.667, supplyC: 59.9, returnC: 53.3 },
  ),
  ...curveRows(
    'R3',
    'same, outdoor 10 °C',
    { ...radiators, outdoorC: 10 },
    { load: 0.333, supplyC: 43.1, returnC: 39.8 },
  ),
  ...curveRows('R4', 'R1 with n 1.0', { ...radiators, exponent: 1, outdoorC: 5 }, { supplyC: 47.5, returnC: 42.5 }),
  computed(
    'R4.too-low',
    'R1 against R4',
    'too low at half load, K',
    4.3,
    0.1,
    CURVE,
    () =>
      unwrap(resetCurve({ ...radiators, outdoorC: 5 })).supplyC -
      unwrap(resetCurve({ ...radiators, exponent: 1, outdoorC: 5 })).supplyC,
  ),
  ...curveRows(
    'R5.cold',
    'floor 40/33/21, design −12, n 1.1, outdoor −3 °C',
    { ...floor, outdoorC: -3 },
    { supplyC: 35.2, returnC: 30.1 },
  ),
  ...curveRows('R5.mild', 'same, outdoor 5 °C', { ...floor, outdoorC: 5 }, { supplyC: 30.7, returnC: 27.3 }),
  ...curveRows(
    'R6',
    '55/45/20, design −10, n 1.3, outdoor 5 °C',
    { ...design(55, 45, 20, -10, 1.3), outdoorC: 5 },
    { supplyC: 40.1, returnC: 35.1 },
  ),
  ...curveRows(
    'R7',
    'R2 with internal gain 8 K',
    { ...radiators, internalGainK: 8, outdoorC: 0 },
    { load: 0.545, supplyC: 54.1, returnC: 48.6 },
  ),
  ...curveRows(
    'R8',
    'R2 with the room set back to 17 °C',
    { ...radiators, outdoorC: 0, roomC: 17 },
    { supplyC: 52.1, returnC: 46.5 },
  ),
  computed(
    'R9.load',
    '180/160/70 °F, design 5 °F, n 1.4, outdoor 35 °F',
    'share of the load',
    0.538,
    0.0005,
    CURVE,
    () => american().loadShare,
  ),
  computed('R9.supply', 'same', 'supply, °F', 139.6, 0.2, CURVE, () => celsiusToFahrenheit(american().supplyC)),
  computed('R9.return', 'same', 'return, °F', 128.9, 0.2, CURVE, () => celsiusToFahrenheit(american().returnC)),
  computed('R10.line', '180 °F at 0 °F, 100 °F at 70 °F; outdoor 30 °F', 'supply, °F', 145.7, 0.1, LINE, () =>
    twoPointF(30),
  ),
  computed('R10.clamped', 'same, outdoor −10 °F', 'supply, °F', 180, 0.1, LINE, () => twoPointF(-10)),
  computed('R11.75', '75/65, 20, −10, n 1.3; return below 55 °C', 'outdoor above, °C', -1.4, 0.2, CURVE, () =>
    condensingFromC(75, 65),
  ),
  computed('R11.80', '80/60, 20, −10, n 1.3; return below 55 °C', 'outdoor above, °C', -4.9, 0.2, CURVE, () =>
    condensingFromC(80, 60),
  ),
];
