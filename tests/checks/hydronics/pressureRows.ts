/** Cold fill, static gradient, relief headroom and suction head: P1–P10. */
import { WATER } from '../../../domain/hydronics/fluid/systemFluid.ts';
import { coldFillPressure, heightServed } from '../../../domain/hydronics/pressure/coldFillPressure.ts';
import { netPositiveSuctionHead } from '../../../domain/hydronics/pressure/netPositiveSuctionHead.ts';
import { highestNormalHotPressure, reliefHeadroom } from '../../../domain/hydronics/pressure/reliefHeadroom.ts';
import { staticGradient, US_RULE_BAR_PER_M } from '../../../domain/hydronics/pressure/staticGradient.ts';
import {
  barToPsi,
  fahrenheitToCelsius,
  feetToMetres,
  metresToFeet,
  psiToBar,
} from '../../../domain/quantity/conversions.ts';
import { unwrap } from '../../../domain/result.ts';
import type { CheckRow } from '../checkRow.ts';
import { computed, published } from './rowKinds.ts';

const TEACHING = 'trade training pages on cold static fill';
const HYDROSTATICS = 'hydrostatics on IAPWS R7-97(2012)';
const SUCTION = 'IAPWS R7-97(2012), pump trade pages';

function fillPsi(heightFt: number): number {
  return barToPsi(
    unwrap(
      coldFillPressure({
        systemHeightM: feetToMetres(heightFt),
        marginBar: psiToBar(4),
        gradientBarPerM: US_RULE_BAR_PER_M,
      }),
    ),
  );
}
function gradientPsiPerFt(temperatureF: number): number {
  return (
    barToPsi(unwrap(staticGradient({ fluid: WATER, temperatureC: fahrenheitToCelsius(temperatureF) }))) *
    feetToMetres(1)
  );
}

export const pressureRows: readonly CheckRow[] = [
  computed('P1.rule', '7 m above gauge, margin 0.3 bar, 0.1 bar/m', 'cold fill, bar', 1.0, 0.02, TEACHING, () =>
    unwrap(coldFillPressure({ systemHeightM: 7, marginBar: 0.3 })),
  ),
  computed('P1.exact', 'same at 10 °C density', 'cold fill, bar', 0.99, 0.02, HYDROSTATICS, () =>
    unwrap(
      coldFillPressure({
        systemHeightM: 7,
        marginBar: 0.3,
        gradientBarPerM: unwrap(staticGradient({ fluid: WATER, temperatureC: 10 })),
      }),
    ),
  ),
  published('P2', '30 ft, margin 4 psi', 'cold fill, psi', 17.0, 0.1, `${TEACHING} (13 + 4)`, () => fillPsi(30)),
  published('P3', '40 ft, margin 4 psi', 'cold fill, psi', 21.3, 0.1, TEACHING, () => fillPsi(40)),
  published('P4.fill', '58 ft, margin 4 psi', 'cold fill, psi', 29.1, 0.1, `${TEACHING} (≈29)`, () => fillPsi(58)),
  computed('P4.headroom', 'same under a 30 psi relief valve', 'headroom, psi', 0.9, 0.1, TEACHING, () =>
    barToPsi(
      unwrap(
        reliefHeadroom({
          pressureBarG: psiToBar(fillPsi(58)),
          reliefSettingBarG: psiToBar(30),
          practice: 'north-america',
        }),
      ).headroomBar,
    ),
  ),
  published('P5', '12 psi fill with 4 psi at the top', 'height served, ft', 18.5, 0.2, TEACHING, () =>
    metresToFeet(
      unwrap(
        heightServed({ fillPressureBarG: psiToBar(12), marginBar: psiToBar(4), gradientBarPerM: US_RULE_BAR_PER_M }),
      ),
    ),
  ),
  ...(
    [
      [39, 0.4335],
      [60, 0.4331],
      [180, 0.4207],
    ] as const
  ).map(([temperatureF, expected]) =>
    computed(
      `P6.${temperatureF}`,
      `water at ${temperatureF} °F`,
      'static gradient, psi/ft',
      expected,
      0.0005,
      HYDROSTATICS,
      () => gradientPsiPerFt(temperatureF),
    ),
  ),
  computed(
    'P7.europe',
    '3 bar valve, Europe',
    'highest normal hot pressure, bar',
    2.5,
    1e-12,
    'German trade note',
    () => unwrap(highestNormalHotPressure({ reliefSettingBarG: 3, practice: 'europe' })),
  ),
  computed(
    'P7.north-america',
    '30 psi valve, North America',
    'highest normal hot pressure, psi',
    27,
    1e-9,
    'ASHRAE, 90 % rule',
    () => barToPsi(unwrap(highestNormalHotPressure({ reliefSettingBarG: psiToBar(30), practice: 'north-america' }))),
  ),
  computed('P8', '80 °C, 0.5 bar g at suction, sea level', 'NPSH available, m', 10.9, 0.1, SUCTION, () =>
    unwrap(netPositiveSuctionHead({ waterC: 80, suctionBarG: 0.5 })),
  ),
  computed('P9', '95 °C, 0.2 bar g', 'NPSH available, m', 3.9, 0.1, SUCTION, () =>
    unwrap(netPositiveSuctionHead({ waterC: 95, suctionBarG: 0.2 })),
  ),
  computed('P10', 'as P8, air 79.5 kPa', 'NPSH available, m', 8.6, 0.1, SUCTION, () =>
    unwrap(netPositiveSuctionHead({ waterC: 80, suctionBarG: 0.5, atmosphericPressureKpaAbs: 79.5 })),
  ),
];
