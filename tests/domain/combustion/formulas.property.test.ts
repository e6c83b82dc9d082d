import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lambdaFromCo2, lambdaFromO2 } from '../../../domain/combustion/airRatio.ts';
import { lambdaFromCarbonBalance } from '../../../domain/combustion/carbonBalance.ts';
import {
  coAirFreeFromCo2,
  coAirFreeFromO2,
  coAirFreeFromRatio,
  coToCo2Ratio,
} from '../../../domain/combustion/coAirFree.ts';
import { combustionEfficiency } from '../../../domain/combustion/combustionEfficiency.ts';
import { combustionProducts } from '../../../domain/combustion/combustionProducts.ts';
import { flueDewPointC } from '../../../domain/combustion/dewPoint.ts';
import { grossFromNetEfficiency, netFromGrossEfficiency } from '../../../domain/combustion/efficiencyBasis.ts';
import { mgPerKwhFromPpm, ppmFromMgPerKwh } from '../../../domain/combustion/emissionMass.ts';
import { lbPerMmbtuFromPpm, ppmFromLbPerMmbtu } from '../../../domain/combustion/fFactors.ts';
import { foPlausibility } from '../../../domain/combustion/foPlausibility.ts';
import type { Fuel } from '../../../domain/combustion/fuel.ts';
import { G20, G25, G30, G31, HD_5, NG_US, OIL_2 } from '../../../domain/combustion/fuels.ts';
import { enthalpyDifferenceKjPerMol } from '../../../domain/combustion/gasEnthalpy.ts';
import { co2FromO2, co2MaxOfPair, o2FromCo2 } from '../../../domain/combustion/o2Co2.ts';
import { atReferenceOxygen } from '../../../domain/combustion/referenceOxygen.ts';
import { flueLossFromCo2, flueLossFromO2, SIEGERT_CONSTANTS } from '../../../domain/combustion/siegert.ts';
import { dryO2FromWetO2 } from '../../../domain/combustion/wetToDry.ts';
import { saturationPressureMpaAbs, saturationTemperatureK } from '../../../domain/hydronics/waterSaturation.ts';
import { unwrap } from '../../../domain/result.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyFuel = fc.constantFrom<Fuel>(G20, G25, NG_US, G31, HD_5, G30, OIL_2);
const anySulphurFreeFuel = fc.constantFrom<Fuel>(G20, G25, NG_US, G31, HD_5, G30);
const analyserO2 = between(0.5, 15);
const sitePressure = between(70, 105);

/** Rounding of double arithmetic only: both sides are the same quantity. */
const SAME = 1e-9;
function expectSame(actual: number, expected: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(SAME * Math.max(1, Math.abs(expected)));
}

function efficiencyAt(
  fuel: Fuel,
  o2DryVolPct: number,
  flueGasC: number,
  pressureKpaAbs = 101.325,
  airRelativeHumidityPct = 0,
) {
  return unwrap(
    combustionEfficiency({ fuel, o2DryVolPct, flueGasC, airC: 20, airRelativeHumidityPct, pressureKpaAbs }),
  );
}

describe('air ratio', () => {
  it('should be the same from O2 as from the CO2 that belongs to it', () => {
    fc.assert(
      fc.property(anyFuel, between(0.5, 14.5), (fuel, o2DryVolPct) => {
        const co2DryVolPct = unwrap(co2FromO2({ fuel, o2DryVolPct }));
        expectSame(unwrap(lambdaFromCo2({ fuel, co2DryVolPct })), unwrap(lambdaFromO2({ fuel, o2DryVolPct })));
      }),
    );
  });

  it('should give back the O2 it was computed from when the products are analysed', () => {
    fc.assert(
      fc.property(anyFuel, analyserO2, (fuel, o2DryVolPct) => {
        const lambda = unwrap(lambdaFromO2({ fuel, o2DryVolPct }));
        const products = unwrap(combustionProducts({ fuel, lambda, airVapourMolPerMol: 0 }));
        expectSame(products.o2DryVolPct, o2DryVolPct);
        expectSame(products.co2DryVolPct, unwrap(co2FromO2({ fuel, o2DryVolPct })));
      }),
    );
  });

  it('should give back the dry O2 from the wet reading of the same flue gas', () => {
    fc.assert(
      fc.property(anyFuel, between(1, 2.3), (fuel, lambda) => {
        const products = unwrap(combustionProducts({ fuel, lambda, airVapourMolPerMol: 0 }));
        const o2WetVolPct = (100 * products.o2Mol) / (products.dryMol + products.waterMol);
        expectSame(unwrap(dryO2FromWetO2({ fuel, o2WetVolPct })), products.o2DryVolPct);
      }),
    );
  });

  it('should agree with the carbon balance on complete combustion', () => {
    fc.assert(
      fc.property(anySulphurFreeFuel, between(0.5, 14), (fuel, o2DryVolPct) => {
        const co2DryVolPct = unwrap(co2FromO2({ fuel, o2DryVolPct }));
        const byCarbon = unwrap(lambdaFromCarbonBalance({ fuel, o2DryVolPct, co2DryVolPct, coPpmDry: 0 }));
        expectSame(byCarbon, unwrap(lambdaFromO2({ fuel, o2DryVolPct })));
      }),
    );
  });

  it('should always rise with O2', () => {
    fc.assert(
      fc.property(anyFuel, between(0.5, 14.9), (fuel, o2DryVolPct) => {
        const more = unwrap(lambdaFromO2({ fuel, o2DryVolPct: o2DryVolPct + 0.1 }));
        expect(more).toBeGreaterThan(unwrap(lambdaFromO2({ fuel, o2DryVolPct })));
      }),
    );
  });
});

describe('O2 and CO2', () => {
  it('should invert each other, and imply the CO2max of the fuel', () => {
    fc.assert(
      fc.property(anyFuel, between(0, 15), (fuel, o2DryVolPct) => {
        const co2DryVolPct = unwrap(co2FromO2({ fuel, o2DryVolPct }));
        expectSame(unwrap(o2FromCo2({ fuel, co2DryVolPct })), o2DryVolPct);
        expectSame(unwrap(co2MaxOfPair({ o2DryVolPct, co2DryVolPct })), fuel.co2MaxDryVolPct);
      }),
    );
  });

  it('should pass the Fo test as a pair, at any dilution', () => {
    fc.assert(
      fc.property(anyFuel, between(0, 12), (fuel, o2DryVolPct) => {
        const co2DryVolPct = unwrap(co2FromO2({ fuel, o2DryVolPct }));
        const fo = unwrap(foPlausibility({ fuel, o2DryVolPct, co2DryVolPct, coPpmDry: 0 }));
        expect(fo.isInsideEpaBand && fo.isInsideTightBand).toBe(true);
      }),
    );
  });
});

describe('CO', () => {
  it('should not depend on dilution once it is air-free, within the two oxygen contents of air', () => {
    fc.assert(
      fc.property(anyFuel, between(0, 10), between(0.01, 5000), (fuel, o2DryVolPct, coPpmDry) => {
        const co2DryVolPct = unwrap(co2FromO2({ fuel, o2DryVolPct }));
        const fromO2 = unwrap(coAirFreeFromO2({ coPpmDry, o2DryVolPct }));
        const fromCo2 = unwrap(coAirFreeFromCo2({ fuel, coPpmDry, co2DryVolPct }));
        expect(Math.abs(fromO2 - fromCo2)).toBeLessThanOrEqual(0.003 * fromCo2);
        const ratio = unwrap(coToCo2Ratio({ coPpmDry, co2DryVolPct }));
        expectSame(unwrap(coAirFreeFromRatio({ fuel, coToCo2Ratio: ratio })), fromCo2);
      }),
    );
  });

  it('should never fall when the excess air is computed away', () => {
    fc.assert(
      fc.property(between(0, 10_000), between(0, 15), (coPpmDry, o2DryVolPct) => {
        expect(unwrap(coAirFreeFromO2({ coPpmDry, o2DryVolPct }))).toBeGreaterThanOrEqual(coPpmDry);
      }),
    );
  });

  it('should come back from reference oxygen, mg/kWh and lb/MMBtu', () => {
    fc.assert(
      fc.property(
        anyFuel,
        fc.constantFrom<'co' | 'nox'>('co', 'nox'),
        fc.constantFrom<'net' | 'gross'>('net', 'gross'),
        between(0, 1000),
        between(0, 15),
        between(0, 15),
        (fuel, pollutant, basis, ppmDry, o2DryVolPct, referenceO2DryVolPct) => {
          const there = unwrap(
            atReferenceOxygen({ concentration: ppmDry, o2DryVolPct, referenceO2DryVolPct, base: '21' }),
          );
          const back = unwrap(
            atReferenceOxygen({
              concentration: there,
              o2DryVolPct: referenceO2DryVolPct,
              referenceO2DryVolPct: o2DryVolPct,
              base: '21',
            }),
          );
          expectSame(back, ppmDry);
          const mgPerKwh = unwrap(mgPerKwhFromPpm({ fuel, pollutant, ppmDry, o2DryVolPct, basis }));
          expectSame(unwrap(ppmFromMgPerKwh({ fuel, pollutant, mgPerKwh, o2DryVolPct, basis })), ppmDry);
          const lbPerMmbtu = unwrap(lbPerMmbtuFromPpm({ pollutant, ppmDry, o2DryVolPct, fdDscfPerMmbtu: 8710 }));
          expectSame(unwrap(ppmFromLbPerMmbtu({ pollutant, lbPerMmbtu, o2DryVolPct, fdDscfPerMmbtu: 8710 })), ppmDry);
        },
      ),
    );
  });
});

describe('dew point', () => {
  const dewPoint = (fuel: Fuel, lambda: number, pressureKpaAbs: number, relativeHumidityPct: number) =>
    unwrap(flueDewPointC({ fuel, lambda, pressureKpaAbs, air: { airC: 20, relativeHumidityPct } }));

  it('should fall with more air and with height, and rise with humidity', () => {
    fc.assert(
      fc.property(anyFuel, between(1, 3), sitePressure, (fuel, lambda, pressureKpaAbs) => {
        const here = dewPoint(fuel, lambda, pressureKpaAbs, 30);
        expect(dewPoint(fuel, lambda + 0.1, pressureKpaAbs, 30)).toBeLessThan(here);
        expect(dewPoint(fuel, lambda, pressureKpaAbs - 5, 30)).toBeLessThan(here);
        expect(dewPoint(fuel, lambda, pressureKpaAbs, 60)).toBeGreaterThan(here);
      }),
    );
  });

  it('should rest on a saturation line that rises and inverts exactly', () => {
    fc.assert(
      fc.property(between(273.16, 646), (temperatureK) => {
        const pressure = unwrap(saturationPressureMpaAbs(temperatureK));
        expect(Math.abs(unwrap(saturationTemperatureK(pressure)) - temperatureK)).toBeLessThan(1e-6);
        expect(unwrap(saturationPressureMpaAbs(temperatureK + 0.5))).toBeGreaterThan(pressure);
      }),
    );
  });
});

describe('efficiency', () => {
  it('should stay within what the fuel holds, whatever the readings', () => {
    fc.assert(
      fc.property(
        anyFuel,
        analyserO2,
        between(20, 600),
        sitePressure,
        between(0, 100),
        (fuel, o2DryVolPct, flueGasC, pressureKpaAbs, humidity) => {
          const result = efficiencyAt(fuel, o2DryVolPct, flueGasC, pressureKpaAbs, humidity);
          expect(Object.values(result).every(Number.isFinite)).toBe(true);
          expect(result.efficiencyGrossPct).toBeLessThanOrEqual(100 + SAME);
          expect(result.efficiencyGrossPct).toBeGreaterThan(0);
          expect(result.condensedFraction).toBeGreaterThanOrEqual(0);
          expect(result.condensedFraction).toBeLessThanOrEqual(1);
          expect(result.sensibleLossPctNet).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });

  it('should fall as the flue gets hotter', () => {
    fc.assert(
      fc.property(anyFuel, analyserO2, between(20, 590), (fuel, o2DryVolPct, flueGasC) => {
        const hotter = efficiencyAt(fuel, o2DryVolPct, flueGasC + 5).efficiencyNetPct;
        expect(hotter).toBeLessThan(efficiencyAt(fuel, o2DryVolPct, flueGasC).efficiencyNetPct);
      }),
    );
  });

  it('should pass through the dew point without a step and be 100 less the sensible loss above it', () => {
    fc.assert(
      fc.property(anyFuel, analyserO2, (fuel, o2DryVolPct) => {
        const { dewPointC } = efficiencyAt(fuel, o2DryVolPct, 150);
        const above = efficiencyAt(fuel, o2DryVolPct, dewPointC + 0.001);
        const below = efficiencyAt(fuel, o2DryVolPct, dewPointC - 0.001);
        expect(above.condensedFraction).toBe(0);
        expect(below.condensedFraction).toBeGreaterThan(0);
        expectSame(above.efficiencyNetPct, 100 - above.sensibleLossPctNet);
        expect(below.efficiencyNetPct - above.efficiencyNetPct).toBeLessThan(0.01);
      }),
    );
  });

  it('should condense nothing from the boiling point at the site upwards (81.3 °C at 50 kPa)', () => {
    for (const flueGasC of [81.4, 81.5, 82, 100, 373, 375, 600]) {
      expect(efficiencyAt(G20, 5, flueGasC, 50).condensedFraction).toBe(0);
    }
  });

  it('should not count the moisture of the air as heat of the fuel', () => {
    const result = unwrap(
      combustionEfficiency({
        fuel: G20,
        o2DryVolPct: 0.5,
        flueGasC: 21,
        airC: 21,
        airRelativeHumidityPct: 100,
        pressureKpaAbs: 101.325,
      }),
    );
    expect(result.condensedFraction).toBe(1);
    expect(result.efficiencyGrossPct).toBeLessThanOrEqual(100);
  });

  it('should change basis and come back', () => {
    fc.assert(
      fc.property(anyFuel, between(10, 110), (fuel, efficiencyNetPct) => {
        const efficiencyGrossPct = unwrap(grossFromNetEfficiency({ fuel, efficiencyNetPct }));
        expect(efficiencyGrossPct).toBeLessThan(efficiencyNetPct);
        expectSame(unwrap(netFromGrossEfficiency({ fuel, efficiencyGrossPct })), efficiencyNetPct);
      }),
    );
  });

  it('should give the Siegert loss from either reading of the same flue gas', () => {
    fc.assert(
      fc.property(between(60, 500), between(0, 12), between(10, 16), (flueGasC, o2DryVolPct, co2MaxDryVolPct) => {
        const constants = SIEGERT_CONSTANTS['light-heating-oil'];
        const co2DryVolPct = (co2MaxDryVolPct * (21 - o2DryVolPct)) / 21;
        expectSame(
          unwrap(flueLossFromCo2({ constants, flueGasC, airC: 20, co2DryVolPct, co2MaxDryVolPct })),
          unwrap(flueLossFromO2({ constants, flueGasC, airC: 20, o2DryVolPct })),
        );
      }),
    );
  });

  it('should add enthalpies over any split of the way, and rise with temperature', () => {
    const anyComponent = fc.constantFrom<'n2' | 'o2' | 'co2' | 'water'>('n2', 'o2', 'co2', 'water');
    fc.assert(
      fc.property(anyComponent, between(-40, 300), between(301, 500), between(501, 700), (component, a, b, c) => {
        const between2 = (fromC: number, toC: number) => unwrap(enthalpyDifferenceKjPerMol({ component, fromC, toC }));
        expectSame(between2(a, b) + between2(b, c), between2(a, c));
        expect(between2(a, b)).toBeGreaterThan(0);
      }),
    );
  });
});
