import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type SystemFluid, WATER } from '../../../../domain/hydronics/fluid/systemFluid.ts';
import { flowAtVelocity, flowVelocity } from '../../../../domain/hydronics/pipes/flowVelocity.ts';
import { frictionFactor } from '../../../../domain/hydronics/pipes/frictionFactor.ts';
import {
  hazenWilliamsPaPerM,
  hazenWilliamsPsiPerFt,
  SMOOTHNESS,
} from '../../../../domain/hydronics/pipes/hazenWilliams.ts';
import { pressureLoss, ROUGHNESS_UM, reynoldsNumber } from '../../../../domain/hydronics/pipes/pressureLoss.ts';
import { unwrap } from '../../../../domain/result.ts';
import { describeRanges } from '../describeRanges.ts';

describe('flow velocity', () => {
  it('goes to flow and back', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 0, max: 5, noNaN: true }),
        fc.double({ min: 5, max: 200, noNaN: true }),
        (velocityMPerS, innerDiameterMm) => {
          const flowLPerMin = unwrap(flowAtVelocity({ velocityMPerS, innerDiameterMm }));
          expect(unwrap(flowVelocity({ flowLPerMin, innerDiameterMm }))).toBeCloseTo(velocityMPerS, 9);
        },
      ),
    );
  });

  it('is the American 0.4085·gpm/d²', () => {
    const metres = unwrap(flowVelocity({ flowLPerMin: 3.785411784, innerDiameterMm: 25.4 }));
    expect(metres / 0.3048).toBeCloseTo(0.4085, 4);
  });
});

describe('friction factor', () => {
  it('solves Colebrook: put back, both sides agree', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 4000, max: 1e8, noNaN: true }),
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        (reynolds, relativeRoughness) => {
          const f = unwrap(frictionFactor({ reynolds, relativeRoughness }));
          const right = -2 * Math.log10(relativeRoughness / 3.7 + 2.51 / (reynolds * Math.sqrt(f)));
          expect(1 / Math.sqrt(f)).toBeCloseTo(right, 9);
        },
      ),
    );
  });

  it('is 64/Re where the flow is laminar', () => {
    expect(unwrap(frictionFactor({ reynolds: 2300, relativeRoughness: 0 }))).toBeCloseTo(64 / 2300, 12);
    expect(unwrap(frictionFactor({ reynolds: 1000, relativeRoughness: 0.01 }))).toBeCloseTo(0.064, 12);
  });

  it('has no answer between laminar and turbulent', () => {
    for (const reynolds of [2301, 3000, 3999]) {
      expect(frictionFactor({ reynolds, relativeRoughness: 0 })).toEqual({
        ok: false,
        error: { code: 'transitional-flow', reynolds },
      });
    }
    expect(frictionFactor({ reynolds: 4000, relativeRoughness: 0 })).toMatchObject({ ok: true });
  });

  // Moody chart for smooth pipe at Re 100 000: 0.018, as any textbook prints it.
  it('reads the Moody chart', () => {
    expect(unwrap(frictionFactor({ reynolds: 1e5, relativeRoughness: 0 }))).toBeCloseTo(0.018, 4);
    expect(unwrap(frictionFactor({ reynolds: 1e5, relativeRoughness: 0.001 }))).toBeCloseTo(0.0222, 4);
  });
});

describe('pressure loss', () => {
  const pipe = { flowLPerMin: 20, innerDiameterMm: 20.2, roughnessUm: 1.5, fluid: WATER, temperatureC: 60 };

  it('grows with the flow and with the wall’s roughness', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 5, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (flowLPerMin, roughnessUm) => {
          const loss = (flow: number, rough: number) =>
            unwrap(pressureLoss({ ...pipe, flowLPerMin: flow, roughnessUm: rough })).lossPaPerM;
          expect(loss(flowLPerMin * 1.01, roughnessUm)).toBeGreaterThan(loss(flowLPerMin, roughnessUm));
          expect(loss(flowLPerMin, roughnessUm + 1)).toBeGreaterThan(loss(flowLPerMin, roughnessUm));
        },
      ),
    );
  });

  it('is Hagen and Poiseuille where the flow is laminar: 128·μ·V̇/(π·d⁴)', () => {
    const slow = { ...pipe, flowLPerMin: 0.5 };
    const viscosityPaS = (unwrap(flowVelocity(slow)) * 0.0202 * 983.2113) / unwrap(reynoldsNumber(slow));
    const expected = (128 * viscosityPaS * (0.5 / 60_000)) / (Math.PI * 0.0202 ** 4);
    expect(unwrap(pressureLoss(slow)).lossPaPerM / expected).toBeCloseTo(1, 5);
  });

  it('passes on an unstable flow', () => {
    expect(pressureLoss({ ...pipe, flowLPerMin: 1.4 })).toMatchObject({
      ok: false,
      error: { code: 'transitional-flow' },
    });
  });

  it('knows the walls', () => {
    expect(ROUGHNESS_UM).toEqual({ copper: 1.5, pex: 1.5, steel: 46 });
  });
});

describe('empirical form', () => {
  it('is the printed formula in both units', () => {
    expect(unwrap(hazenWilliamsPsiPerFt({ flowUsGpm: 1, innerDiameterIn: 1, smoothness: 100 }))).toBeCloseTo(
      4.52 / 100 ** 1.85,
      15,
    );
    expect(unwrap(hazenWilliamsPsiPerFt({ flowUsGpm: 10, innerDiameterIn: 2, smoothness: 150 }))).toBeCloseTo(
      (4.52 * 10 ** 1.85) / (150 ** 1.85 * 2 ** 4.87),
      15,
    );
    // 60 m³/min through a metre: the exponents drop out of neither term.
    expect(unwrap(hazenWilliamsPaPerM({ flowLPerMin: 60_000, innerDiameterMm: 1000, smoothness: 100 }))).toBeCloseTo(
      (10.67 / 100 ** 1.852) * 9806.65,
      9,
    );
    expect(unwrap(hazenWilliamsPaPerM({ flowLPerMin: 60, innerDiameterMm: 50, smoothness: 150 }))).toBeCloseTo(
      ((10.67 * 0.001 ** 1.852) / (150 ** 1.852 * 0.05 ** 4.87)) * 9806.65,
      9,
    );
  });

  it('knows its pipes', () => {
    expect(SMOOTHNESS).toEqual({ newCopperOrPlastic: 150, designCopper: 140, cautious: 130, steel: [100, 120] });
  });
});

describeRanges('flowVelocity', flowVelocity, { flowLPerMin: 20, innerDiameterMm: 20 }, [
  ['flowLPerMin', 0, 100_000],
  ['innerDiameterMm', 1, 1000],
]);
describeRanges('flowAtVelocity', flowAtVelocity, { velocityMPerS: 1, innerDiameterMm: 20 }, [
  ['velocityMPerS', 0, 20],
  ['innerDiameterMm', 1, 1000],
]);
describeRanges('frictionFactor', frictionFactor, { reynolds: 1e4, relativeRoughness: 0 }, [
  ['reynolds', 1, 1e8],
  ['relativeRoughness', 0, 0.05],
]);
const glycolPipe = {
  flowLPerMin: 20,
  innerDiameterMm: 20,
  fluid: { kind: 'propylene-glycol', glycolMassPct: 60 } as SystemFluid,
  temperatureC: 0,
};
describeRanges('reynoldsNumber', reynoldsNumber, glycolPipe, [
  ['flowLPerMin', 0.001, 100_000],
  ['innerDiameterMm', 1, 1000],
]);
describeRanges('pressureLoss', pressureLoss, { ...glycolPipe, roughnessUm: 2 }, [
  ['roughnessUm', 0, 1000],
  ['temperatureC', null, 100],
]);
const american = { flowUsGpm: 10, innerDiameterIn: 2, smoothness: 140 };
describeRanges('hazenWilliamsPsiPerFt', hazenWilliamsPsiPerFt, american, [
  ['flowUsGpm', 0, 20_000],
  ['innerDiameterIn', 0.2, 40],
  ['smoothness', 60, 160],
]);
describeRanges('hazenWilliamsPaPerM', hazenWilliamsPaPerM, { flowLPerMin: 40, innerDiameterMm: 50, smoothness: 140 }, [
  ['flowLPerMin', 0, 75_000],
  ['innerDiameterMm', 5, 1000],
  ['smoothness', 60, 160],
]);
