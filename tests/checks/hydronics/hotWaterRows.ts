/** Domestic hot water: D1–D7 and the printed table of flows. */
import { WATER } from '../../../domain/hydronics/fluid/systemFluid.ts';
import { hotShare } from '../../../domain/hydronics/hotWater/hotShare.ts';
import { hotWaterFlow } from '../../../domain/hydronics/hotWater/hotWaterFlow.ts';
import { shortestScaldTime } from '../../../domain/hydronics/hotWater/scaldTimes.ts';
import { heatOutput } from '../../../domain/hydronics/output/heatOutput.ts';
import { flowByUsRule } from '../../../domain/hydronics/output/ruleOfThumbFlow.ts';
import { fahrenheitToCelsius } from '../../../domain/quantity/conversions.ts';
import { unwrap } from '../../../domain/result.ts';
import type { CheckRow } from '../checkRow.ts';
import { computed, lastFigure, percent, published } from './rowKinds.ts';

const ENERGY = 'energy balance on IAPWS R7-97(2012)';

function flow(outputKw: number, riseK: number): number {
  return unwrap(hotWaterFlow({ outputKw, coldC: 10, riseK }));
}
function usFlow(outputBtuPerH: number, deltaTF: number): number {
  return unwrap(flowByUsRule({ outputBtuPerH, deltaTF }));
}

export const hotWaterRows: readonly CheckRow[] = [
  ...(
    [
      ['D1', 24, 30, 11.5],
      ['D1', 24, 35, 9.84],
      ['D1', 24, 40, 8.61],
      ['D2', 30, 30, 14.4],
      ['D2', 30, 35, 12.3],
      ['D2', 30, 40, 10.8],
    ] as const
  ).map(([id, outputKw, riseK, expected]) =>
    computed(
      `${id}.${riseK}`,
      `${outputKw} kW, 10 °C in, rise ${riseK} K`,
      'flow, L/min',
      expected,
      percent(0.5),
      ENERGY,
      () => flow(outputKw, riseK),
    ),
  ),
  computed('D3', '199,000 Btu/h input × 0.95, rise 70 °F, 500 rule', 'flow, gpm', 5.4, percent(0.5), 'rule', () =>
    usFlow(199_000 * 0.95, 70),
  ),
  ...(
    [
      [45, 6.67],
      [67, 4.48],
      [77, 3.9],
    ] as const
  ).map(([riseF, expected]) =>
    computed(`D4.${riseF}`, `150,000 Btu/h, rise ${riseF} °F`, 'flow, gpm', expected, percent(0.5), 'rule', () =>
      usFlow(150_000, riseF),
    ),
  ),
  computed('D5.60', '60/10 → 40 °C', 'hot share', 0.6, 0.001, 'energy balance', () =>
    unwrap(hotShare({ hotC: 60, coldC: 10, mixedC: 40 })),
  ),
  computed('D5.140', '140/50 → 105 °F', 'hot share', 0.611, 0.001, 'energy balance', () =>
    unwrap(
      hotShare({ hotC: fahrenheitToCelsius(140), coldC: fahrenheitToCelsius(50), mixedC: fahrenheitToCelsius(105) }),
    ),
  ),
  computed('D5.55', '55/8 → 43 °C', 'hot share', 0.745, 0.001, 'energy balance', () =>
    unwrap(hotShare({ hotC: 55, coldC: 8, mixedC: 43 })),
  ),
  computed('D6', '9.2 L/min, 9 → 46 °C, cold meter', 'output, kW', 23.7, percent(0.5), ENERGY, () =>
    unwrap(heatOutput({ flowLPerMin: 9.2, meterC: 9, supplyC: 46, returnC: 9, fluid: WATER })),
  ),
  computed('D7', '24 kW, 10 → 38 °C direct', 'flow, L/min', 12.3, percent(0.5), ENERGY, () => flow(24, 28)),
];

const METRIC_TABLE = [
  [18, [10.3, 8.6, 7.4, 6.5, 5.7]],
  [24, [13.8, 11.5, 9.8, 8.6, 7.7]],
  [28, [16.1, 13.4, 11.5, 10.1, 8.9]],
  [35, [20.1, 16.7, 14.4, 12.6, 11.2]],
] as const;
const METRIC_RISES_K = [25, 30, 35, 40, 45] as const;

const US_TABLE = [
  [80_000, [4.57, 3.56, 2.91, 2.29, 2.08]],
  [100_000, [5.71, 4.44, 3.64, 2.86, 2.6]],
  [150_000, [8.57, 6.67, 5.45, 4.29, 3.9]],
  [189_000, [10.8, 8.4, 6.87, 5.4, 4.91]],
] as const;
const US_RISES_F = [35, 45, 55, 70, 77] as const;

/** The table doesn't state its cold temperature: one more unit than the rounding. */
export const hotWaterTableRows: readonly CheckRow[] = [
  ...METRIC_TABLE.flatMap(([outputKw, flows]) =>
    METRIC_RISES_K.map((riseK, column) =>
      computed(
        `DT-${outputKw}.${riseK}`,
        `${outputKw} kW, rise ${riseK} K`,
        'flow, L/min',
        flows[column] ?? Number.NaN,
        0.1,
        ENERGY,
        () => flow(outputKw, riseK),
      ),
    ),
  ),
  ...US_TABLE.flatMap(([outputBtuPerH, flows]) =>
    US_RISES_F.map((riseF, column) =>
      computed(
        `DT-${outputBtuPerH}.${riseF}`,
        `${outputBtuPerH} Btu/h, rise ${riseF} °F`,
        'flow, gpm',
        flows[column] ?? Number.NaN,
        lastFigure(2),
        'rule',
        () => usFlow(outputBtuPerH, riseF),
      ),
    ),
  ),
];

const PUBLISHED_BURNS = 'shortest of CPSC notice, burn research and industry leaflet';

/** At each tabled temperature the shortest time printed for it or for any cooler water. */
export const scaldRows: readonly CheckRow[] = (
  [
    [fahrenheitToCelsius(150), 0.5],
    [60, 1],
    [fahrenheitToCelsius(133), 15],
    [55, 17],
    [fahrenheitToCelsius(130), 30],
    [51, 120],
    [49, 240],
    [fahrenheitToCelsius(120), 240],
    [48, 900],
    [45, 7200],
  ] as const
).map(([waterC, seconds]) =>
  published(
    `SC-${waterC.toFixed(1)}`,
    `${waterC.toFixed(1)} °C`,
    'burn time for warnings, s',
    seconds,
    0,
    PUBLISHED_BURNS,
    () => unwrap(shortestScaldTime({ waterC })).seconds,
  ),
);
