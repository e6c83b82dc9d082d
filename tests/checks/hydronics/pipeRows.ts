/** Pipes: F1–F9. */
import { WATER } from '../../../domain/hydronics/fluid/systemFluid.ts';
import { flowAtVelocity, flowVelocity } from '../../../domain/hydronics/pipes/flowVelocity.ts';
import { hazenWilliamsPaPerM, hazenWilliamsPsiPerFt } from '../../../domain/hydronics/pipes/hazenWilliams.ts';
import { pressureLoss, ROUGHNESS_UM } from '../../../domain/hydronics/pipes/pressureLoss.ts';
import { staticGradient } from '../../../domain/hydronics/pressure/staticGradient.ts';
import {
  fahrenheitToCelsius,
  feetToMetres,
  inchesToMm,
  lPerMinToUsGpm,
  METRES_PER_FOOT,
  PA_PER_BAR,
  PA_PER_PSI,
  usGpmToLPerMin,
} from '../../../domain/quantity/conversions.ts';
import { unwrap } from '../../../domain/result.ts';
import type { CheckRow } from '../checkRow.ts';
import { computed, percent, published } from './rowKinds.ts';

const EMPIRICAL = 'NFPA-style loss formula';
const FRICTION = 'Darcy and Colebrook on IAPWS R7-97(2012) and R12-08(2008)';
const PUMP_HANDBOOK = 'HVAC pump handbook, tables 3.1 and 3.5';

const threeQuarterMm = inchesToMm(0.785);
const steelMm = inchesToMm(2.469);
const PSI_PER_100_FT = (100 * METRES_PER_FOOT) / PA_PER_PSI;

function smoothPsiPer100Ft(temperatureF: number): number {
  const loss = pressureLoss({
    flowLPerMin: usGpmToLPerMin(4),
    innerDiameterMm: threeQuarterMm,
    roughnessUm: 0,
    fluid: WATER,
    temperatureC: fahrenheitToCelsius(temperatureF),
  });
  return unwrap(loss).lossPaPerM * PSI_PER_100_FT;
}
/** Feet of the water itself per 100 ft. */
function steelFtPer100Ft(flowUsGpm: number): number {
  const temperatureC = fahrenheitToCelsius(60);
  const loss = pressureLoss({
    flowLPerMin: usGpmToLPerMin(flowUsGpm),
    innerDiameterMm: steelMm,
    roughnessUm: 0.00015 * METRES_PER_FOOT * 1e6,
    fluid: WATER,
    temperatureC,
  });
  const columnPaPerM = unwrap(staticGradient({ fluid: WATER, temperatureC })) * PA_PER_BAR;
  return (100 * unwrap(loss).lossPaPerM) / columnPaPerM;
}
function copper(flowLPerMin: number, innerDiameterMm: number, temperatureC: number, glycolMassPct?: number) {
  return unwrap(
    pressureLoss({
      flowLPerMin,
      innerDiameterMm,
      roughnessUm: ROUGHNESS_UM.copper,
      fluid: glycolMassPct === undefined ? WATER : { kind: 'propylene-glycol', glycolMassPct },
      temperatureC,
    }),
  );
}
const f1 = () => unwrap(flowVelocity({ flowLPerMin: usGpmToLPerMin(4), innerDiameterMm: threeQuarterMm }));
const f8 = () =>
  unwrap(
    pressureLoss({
      flowLPerMin: 2,
      innerDiameterMm: 12,
      roughnessUm: ROUGHNESS_UM.pex,
      fluid: WATER,
      temperatureC: 40,
    }),
  );

export const pipeRows: readonly CheckRow[] = [
  computed(
    'F1.feet',
    '4 gpm in ¾ in type L (0.785 in)',
    'velocity, ft/s',
    2.65,
    percent(0.5),
    EMPIRICAL,
    () => f1() / METRES_PER_FOOT,
  ),
  computed('F1.metres', 'same', 'velocity, m/s', 0.81, percent(0.5), EMPIRICAL, f1),
  ...(
    [
      [150, 1.8],
      [140, 2.05],
      [130, 2.34],
    ] as const
  ).flatMap(([smoothness, expected]) => [
    computed(
      `F2.${smoothness}`,
      `F1, C ${smoothness}`,
      'loss, psi/100 ft',
      expected,
      percent(1),
      EMPIRICAL,
      () => 100 * unwrap(hazenWilliamsPsiPerFt({ flowUsGpm: 4, innerDiameterIn: 0.785, smoothness })),
    ),
    computed(
      `F2.si-${smoothness}`,
      `F1, C ${smoothness}, metric form`,
      'loss, psi/100 ft',
      expected,
      percent(1),
      'C-factor encyclopedia page',
      () =>
        unwrap(hazenWilliamsPaPerM({ flowLPerMin: usGpmToLPerMin(4), innerDiameterMm: threeQuarterMm, smoothness })) *
        PSI_PER_100_FT,
    ),
  ]),
  computed('F3.60', 'F1, smooth, 60 °F', 'loss, psi/100 ft', 2.04, percent(2), FRICTION, () => smoothPsiPer100Ft(60)),
  computed('F3.140', 'F1, smooth, 140 °F', 'loss, psi/100 ft', 1.64, percent(2), FRICTION, () =>
    smoothPsiPer100Ft(140),
  ),
  ...(
    [
      [40, 2.68, 1.28, 1.28],
      [60, 4.02, 2.71, 2.72],
      [100, 6.7, 7.1, 7.11],
    ] as const
  ).flatMap(([flowUsGpm, velocity, loss, printed]) => [
    computed(
      `F4.velocity-${flowUsGpm}`,
      `2½ in Sch 40, 60 °F, ${flowUsGpm} gpm`,
      'velocity, ft/s',
      velocity,
      percent(1),
      PUMP_HANDBOOK,
      () =>
        unwrap(flowVelocity({ flowLPerMin: usGpmToLPerMin(flowUsGpm), innerDiameterMm: steelMm })) / METRES_PER_FOOT,
    ),
    computed(
      `F4.loss-${flowUsGpm}`,
      `2½ in Sch 40, 60 °F, ${flowUsGpm} gpm`,
      'loss, ft/100 ft',
      loss,
      percent(1),
      FRICTION,
      () => steelFtPer100Ft(flowUsGpm),
    ),
    published(
      `F4.published-${flowUsGpm}`,
      `2½ in Sch 40, 60 °F, ${flowUsGpm} gpm`,
      'loss, ft/100 ft',
      printed,
      percent(1),
      PUMP_HANDBOOK,
      () => steelFtPer100Ft(flowUsGpm),
    ),
  ]),
  computed(
    'F5.velocity',
    '20 L/min, 22×0.9 copper, water 60 °C',
    'velocity, m/s',
    1.04,
    percent(2),
    FRICTION,
    () => copper(20, 20.2, 60).velocityMPerS,
  ),
  computed('F5.loss', 'same', 'loss, Pa/m', 572, percent(2), FRICTION, () => copper(20, 20.2, 60).lossPaPerM),
  computed(
    'F6.cold',
    'F5, water 20 °C',
    'loss, Pa/m',
    689,
    percent(3),
    FRICTION,
    () => copper(20, 20.2, 20).lossPaPerM,
  ),
  computed(
    'F6.glycol',
    'F5, PG 30 % at 40 °C',
    'loss, Pa/m',
    778,
    percent(3),
    'Darcy and Colebrook on IIR 2010',
    () => copper(20, 20.2, 40, 30).lossPaPerM,
  ),
  computed(
    'F7.velocity',
    '12 L/min, 15×0.7 copper, 60 °C',
    'velocity, m/s',
    1.38,
    percent(2),
    FRICTION,
    () => copper(12, 13.6, 60).velocityMPerS,
  ),
  computed('F7.loss', 'same', 'loss, kPa/m', 1.53, percent(2), FRICTION, () => copper(12, 13.6, 60).lossPaPerM / 1000),
  computed(
    'F8.velocity',
    '2.0 L/min, PEX 16×2, 40 °C',
    'velocity, m/s',
    0.295,
    percent(1),
    FRICTION,
    () => f8().velocityMPerS,
  ),
  computed('F8.reynolds', 'same', 'Re', 5380, percent(1), FRICTION, () => f8().reynolds),
  ...(
    [
      ['½', 0.545, 2.9],
      ['¾', 0.785, 6.0],
      ['1', 1.025, 10.3],
    ] as const
  ).map(([size, innerDiameterIn, expected]) =>
    computed(
      `F9.${size}`,
      `4 ft/s, type L ${size} in`,
      'flow, gpm',
      expected,
      percent(1),
      'copper tube handbook sizes',
      () =>
        lPerMinToUsGpm(
          unwrap(flowAtVelocity({ velocityMPerS: feetToMetres(4), innerDiameterMm: inchesToMm(innerDiameterIn) })),
        ),
    ),
  ),
];
