/** Heat output, flow and the true "500" factor: Q1–Q11. */
import { WATER } from '../../../domain/hydronics/fluid/systemFluid.ts';
import { flowFromOutput } from '../../../domain/hydronics/output/flowFromOutput.ts';
import { heatOutput } from '../../../domain/hydronics/output/heatOutput.ts';
import { heatOutputSimple } from '../../../domain/hydronics/output/heatOutputSimple.ts';
import { heatOutputUncertainty } from '../../../domain/hydronics/output/heatOutputUncertainty.ts';
import { flowByMetricRule, flowByUsRule, outputByUsRule } from '../../../domain/hydronics/output/ruleOfThumbFlow.ts';
import { trueFlowFactor } from '../../../domain/hydronics/output/trueFlowFactor.ts';
import {
  btuPerHToKw,
  fahrenheitToCelsius,
  kwToBtuPerH,
  lPerMinToUsGpm,
  usGpmToLPerMin,
} from '../../../domain/quantity/conversions.ts';
import { unwrap } from '../../../domain/result.ts';
import type { CheckRow } from '../checkRow.ts';
import { computed, percent } from './rowKinds.ts';

const ENERGY = 'energy balance on IAPWS R7-97(2012)';

function waterOutput(flowLPerMin: number, meterC: number, supplyC: number, returnC: number): number {
  return unwrap(heatOutput({ flowLPerMin, meterC, supplyC, returnC, fluid: WATER }));
}
/** 10 gpm, meter in the return. */
function tenGpmBtuPerH(supplyF: number, returnF: number): number {
  const returnC = fahrenheitToCelsius(returnF);
  return kwToBtuPerH(waterOutput(usGpmToLPerMin(10), returnC, fahrenheitToCelsius(supplyF), returnC));
}
const tenGpmByRule = () => unwrap(outputByUsRule({ flowUsGpm: 10, deltaTF: 20 }));
function waterFactor(temperatureF: number): number {
  return unwrap(trueFlowFactor({ fluid: WATER, temperatureC: fahrenheitToCelsius(temperatureF) }));
}
function twoSensors(deltaTK: number): number {
  const sensors = { supplySensorK: 0.3, returnSensorK: 0.3, flowPct: 0 };
  return unwrap(heatOutputUncertainty({ ...sensors, deltaTK })).uncertaintyPct;
}
function twentyFourKwLPerMin(): number {
  return unwrap(flowFromOutput({ outputKw: 24, meterC: 60, supplyC: 80, returnC: 60, fluid: WATER }));
}

export const outputRows: readonly CheckRow[] = [
  computed('Q1', '20 L/min, meter in return (50 °C), 70/50 °C', 'output, kW', 27.55, percent(0.2), ENERGY, () =>
    waterOutput(20, 50, 70, 50),
  ),
  computed('Q2.kw', 'same, 1 kg/L and 4.186 kJ/(kg K)', 'output, kW', 27.91, percent(0.05), 'arithmetic', () =>
    unwrap(heatOutputSimple({ flowLPerMin: 20, deltaTK: 20 })),
  ),
  computed('Q2.excess', 'same', 'over the true output, %', 1.3, 0.05, 'arithmetic', () => {
    const simple = unwrap(heatOutputSimple({ flowLPerMin: 20, deltaTK: 20 }));
    return 100 * (simple / waterOutput(20, 50, 70, 50) - 1);
  }),
  computed('Q3', '1000 L/h, meter in return (60 °C), 80/60 °C', 'output, kW', 22.88, percent(0.2), ENERGY, () =>
    waterOutput(1000 / 60, 60, 80, 60),
  ),
  computed('Q4', '12 L/min cold-side meter, hot water 10 → 50 °C', 'output, kW', 33.4, percent(0.3), ENERGY, () =>
    waterOutput(12, 10, 50, 10),
  ),
  computed('Q5.output', '10 gpm, meter at 160 °F, 180/160 °F', 'output, Btu/h', 98_000, percent(0.3), ENERGY, () =>
    tenGpmBtuPerH(180, 160),
  ),
  computed('Q5.rule', 'same', 'by the rule, Btu/h', 100_000, 1e-6, 'rule', tenGpmByRule),
  computed(
    'Q5.excess',
    'same',
    'rule over the true output, %',
    2.0,
    0.3,
    ENERGY,
    () => 100 * (tenGpmByRule() / tenGpmBtuPerH(180, 160) - 1),
  ),
  computed('Q6.output', '10 gpm, meter at 120 °F, 140/120 °F', 'output, Btu/h', 98_850, percent(0.3), ENERGY, () =>
    tenGpmBtuPerH(140, 120),
  ),
  computed(
    'Q6.excess',
    'same',
    'rule over the true output, %',
    1.2,
    0.3,
    ENERGY,
    () => 100 * (tenGpmByRule() / tenGpmBtuPerH(140, 120) - 1),
  ),
  ...(
    [
      [60, 500.4],
      [100, 496.3],
      [140, 491.8],
      [180, 487.1],
    ] as const
  ).map(([temperatureF, expected]) =>
    computed(
      `Q7.${temperatureF}`,
      `water at ${temperatureF} °F`,
      'true factor, Btu/h per gpm °F',
      expected,
      0.3,
      ENERGY,
      () => waterFactor(temperatureF),
    ),
  ),
  ...([100, 140] as const).map((temperatureF) =>
    computed(`Q8.${temperatureF}`, `PG 30 % mass, ${temperatureF} °F`, 'true factor', 474, percent(1), 'IIR 2010', () =>
      unwrap(
        trueFlowFactor({
          fluid: { kind: 'propylene-glycol', glycolMassPct: 30 },
          temperatureC: fahrenheitToCelsius(temperatureF),
        }),
      ),
    ),
  ),
  computed(
    'Q9.flow',
    '24 kW at 80/60 °C, return side',
    'flow, L/h',
    1049,
    percent(0.3),
    ENERGY,
    () => 60 * twentyFourKwLPerMin(),
  ),
  computed('Q9.minute', 'same', 'flow, L/min', 17.5, percent(0.3), ENERGY, twentyFourKwLPerMin),
  computed('Q9.rule', 'same, 860 rule', 'flow, L/h', 1032, percent(0.3), 'rule', () =>
    unwrap(flowByMetricRule({ outputKw: 24, deltaTK: 20 })),
  ),
  computed('Q10.rule', '100,000 Btu/h, ΔT 20 °F', 'flow by the rule, gpm', 10.0, percent(0.5), 'rule', () =>
    unwrap(flowByUsRule({ outputBtuPerH: 100_000, deltaTF: 20 })),
  ),
  computed('Q10.true', 'same, mean 170 °F', 'flow, gpm', 10.2, percent(0.5), ENERGY, () =>
    lPerMinToUsGpm(
      unwrap(
        flowFromOutput({
          outputKw: btuPerHToKw(100_000),
          meterC: fahrenheitToCelsius(170),
          supplyC: fahrenheitToCelsius(180),
          returnC: fahrenheitToCelsius(160),
          fluid: WATER,
        }),
      ),
    ),
  ),
  computed('Q11.ten', 'two sensors ±0.3 K, ΔT 10 K', '± % of the output', 4.2, 0.1, 'root-sum-square', () =>
    twoSensors(10),
  ),
  computed('Q11.five', 'two sensors ±0.3 K, ΔT 5 K', '± % of the output', 8.5, 0.1, 'root-sum-square', () =>
    twoSensors(5),
  ),
];

/** The rule's error as the text beside the table prints it. */
export const ruleErrorRows: readonly CheckRow[] = [
  ...(
    [
      [120, 1.2],
      [140, 1.7],
      [180, 2.6],
    ] as const
  ).map(([temperatureF, expected]) =>
    computed(
      `QR.${temperatureF}`,
      `500 against water at ${temperatureF} °F`,
      'error of the rule, %',
      expected,
      0.1,
      ENERGY,
      () => 100 * (500 / waterFactor(temperatureF) - 1),
    ),
  ),
];
