/**
 * The glycol polynomials at the corners of their range, where every coefficient counts.
 *
 * Source   the same published coefficients typed a second time and summed with 30 digits
 */
import { describe, expect, it } from 'vitest';
import { glycolFreezingPoint } from '../../../../domain/hydronics/fluid/glycolFreezingPoint.ts';
import { glycolProperties } from '../../../../domain/hydronics/fluid/glycolProperties.ts';
import { unwrap } from '../../../../domain/result.ts';

const FREEZING = [
  ['propylene-glycol', 0, -0.025071276065459],
  ['propylene-glycol', 15, -4.8721936029623],
  ['propylene-glycol', 30, -12.78910405847],
  ['propylene-glycol', 45, -25.767264469715],
  ['propylene-glycol', 60, -50.002646684946],
  ['ethylene-glycol', 0, 0.00028508155443003],
  ['ethylene-glycol', 15, -5.4434908234053],
  ['ethylene-glycol', 30, -14.575777860784],
  ['ethylene-glycol', 45, -29.524440878565],
  ['ethylene-glycol', 60, -51.200915082829],
] as const;

/** mass %, °C, ρ kg/m³, cp kJ/(kg K), μ Pa s. */
const PROPERTIES = [
  ['propylene-glycol', 0, 0.5, 1000.2584352589, 4.2126007235858, 0.0017768209236522],
  ['propylene-glycol', 0, 100, 958.94195802948, 4.2154838909551, 0.00027837002144849],
  ['propylene-glycol', 15, 60, 992.74104636135, 4.0989932926642, 0.00069097538847516],
  ['propylene-glycol', 30, -5, 1033.0243872948, 3.7889663496935, 0.0092719270714681],
  ['propylene-glycol', 45, 100, 978.04826570338, 3.8982960506917, 0.00068876431543873],
  ['propylene-glycol', 60, -45, 1076.0713607278, 3.0473548027879, 2.0334510689344],
  ['propylene-glycol', 60, 100, 980.83389489439, 3.6976943392481, 0.00090935413252101],
  ['ethylene-glycol', 0, 0.5, 999.26596580929, 4.2097316483546, 0.0017485749465706],
  ['ethylene-glycol', 0, 100, 957.72997354372, 4.2136046642892, 0.0002765661034242],
  ['ethylene-glycol', 15, 60, 1000.7370871926, 4.0294544354129, 0.00062560740660253],
  ['ethylene-glycol', 30, -5, 1046.3145170481, 3.642649582775, 0.0052541191534615],
  ['ethylene-glycol', 45, 100, 1006.0824035879, 3.7194051018901, 0.00063377449218971],
  ['ethylene-glycol', 60, -45, 1103.03813156, 2.6481588105348, 0.24496325290974],
  ['ethylene-glycol', 60, 100, 1020.8169384062, 3.4764596540235, 0.0008291105380205],
] as const;

describe('glycol polynomials', () => {
  it.each(FREEZING)('%s %s % mass freezes at %s °C', (glycol, glycolMassPct, freezingC) => {
    expect(Math.abs(unwrap(glycolFreezingPoint({ glycol, glycolMassPct })) - freezingC)).toBeLessThanOrEqual(1e-11);
  });

  it.each(PROPERTIES)('%s %s % mass at %s °C', (glycol, glycolMassPct, temperatureC, density, heat, viscosity) => {
    const properties = unwrap(glycolProperties({ glycol, glycolMassPct, temperatureC }));
    expect(Math.abs(properties.densityKgPerM3 / density - 1)).toBeLessThanOrEqual(1e-12);
    expect(Math.abs(properties.specificHeatKjPerKgK / heat - 1)).toBeLessThanOrEqual(1e-12);
    expect(Math.abs(properties.viscosityPaS / viscosity - 1)).toBeLessThanOrEqual(1e-12);
    expect(properties.isExtrapolated).toBe(temperatureC > 40);
  });

  it('counts 40 °C itself to the test data', () => {
    const at = (temperatureC: number) =>
      unwrap(glycolProperties({ glycol: 'propylene-glycol', glycolMassPct: 30, temperatureC })).isExtrapolated;
    expect([at(40), at(40.1)]).toEqual([false, true]);
  });
});
