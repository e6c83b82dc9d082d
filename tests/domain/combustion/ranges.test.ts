import { describe, expect, it } from 'vitest';
import { lambdaFromCo2, lambdaFromO2 } from '../../../domain/combustion/airRatio.ts';
import { lambdaFromCarbonBalance } from '../../../domain/combustion/carbonBalance.ts';
import {
  coAirFreeFromCo2,
  coAirFreeFromO2,
  coAirFreeFromRatio,
  coToCo2Ratio,
} from '../../../domain/combustion/coAirFree.ts';
import { combustionAirM3PerH, combustionAirM3PerKwhGross } from '../../../domain/combustion/combustionAir.ts';
import { combustionEfficiency } from '../../../domain/combustion/combustionEfficiency.ts';
import { combustionProducts } from '../../../domain/combustion/combustionProducts.ts';
import { condensateKgPerKwh, condensateLPerH } from '../../../domain/combustion/condensate.ts';
import { flueDewPointC, gasDewPointC } from '../../../domain/combustion/dewPoint.ts';
import {
  fuelSavingPct,
  grossFromNetEfficiency,
  netFromGrossEfficiency,
} from '../../../domain/combustion/efficiencyBasis.ts';
import {
  mgPerKwhFromPpm,
  mgPerM3FromPpm,
  noxPpmFromNoPpm,
  ppmFromMgPerKwh,
} from '../../../domain/combustion/emissionMass.ts';
import { excessAirFromAnalysis } from '../../../domain/combustion/epaExcessAir.ts';
import {
  fcFromUltimateAnalysis,
  fdFromUltimateAnalysis,
  foFromFFactors,
  lbPerMmbtuFromPpm,
  lbPerScfPerPpm,
  mgPerKwhGrossFromLbPerMmbtu,
  ppmFromLbPerMmbtu,
} from '../../../domain/combustion/fFactors.ts';
import { foPlausibility } from '../../../domain/combustion/foPlausibility.ts';
import { G20, OIL_2 } from '../../../domain/combustion/fuels.ts';
import { gasFuelWithSupplierData, oilFuelWithSupplierData } from '../../../domain/combustion/fuelWithSupplierData.ts';
import { enthalpyDifferenceKjPerMol } from '../../../domain/combustion/gasEnthalpy.ts';
import { gasProperties } from '../../../domain/combustion/gasProperties.ts';
import { airVapourMolPerMol } from '../../../domain/combustion/humidAir.ts';
import { co2FromO2, co2MaxOfPair, o2FromCo2 } from '../../../domain/combustion/o2Co2.ts';
import { oilFuel } from '../../../domain/combustion/oilFuel.ts';
import { atReferenceOxygen } from '../../../domain/combustion/referenceOxygen.ts';
import { EN_437_STATE } from '../../../domain/combustion/referenceState.ts';
import { flueLossFromCo2, flueLossFromO2, SIEGERT_CONSTANTS, siegertA1 } from '../../../domain/combustion/siegert.ts';
import { dryGasLoss, stackLossShortForm } from '../../../domain/combustion/stackLoss.ts';
import { dryFromWet, dryO2FromWetO2 } from '../../../domain/combustion/wetToDry.ts';
import { saturationPressureMpaAbs, saturationTemperatureK } from '../../../domain/hydronics/waterSaturation.ts';
import { unwrap } from '../../../domain/result.ts';
import { describeRanges, type RangeCase } from './describeRange.ts';

/** One case per field of a formula's input: the other fields stay as in `valid`. */
function fields<I extends Record<string, unknown>>(
  formula: (input: I) => ReturnType<RangeCase['call']>,
  valid: I,
  ranges: Readonly<Partial<Record<keyof I & string, readonly [number, number]>>>,
): RangeCase[] {
  const quantities = Object.keys(ranges) as Array<keyof I & string>;
  return quantities.map((quantity) => {
    const [min, max] = ranges[quantity] ?? [Number.NaN, Number.NaN];
    return { quantity, min, max, call: (value) => formula({ ...valid, [quantity]: value }) };
  });
}

const CO2_MAX = G20.co2MaxDryVolPct;
const PAIR = { o2DryVolPct: 5, co2DryVolPct: 9, coPpmDry: 50 };
const CONSTANTS = SIEGERT_CONSTANTS['public-network-gas'];
const EFFICIENCY = {
  fuel: G20,
  o2DryVolPct: 5,
  flueGasC: 150,
  airC: 10,
  airRelativeHumidityPct: 0,
  pressureKpaAbs: 101.325,
};
const ANALYSIS = {
  carbonMassPct: 75,
  hydrogenMassPct: 25,
  sulphurMassPct: 0,
  nitrogenMassPct: 0,
  oxygenMassPct: 0,
  gcvBtuPerLb: 23_867,
};
const SHARES: readonly [number, number] = [0, 100];
const ANALYSIS_RANGES = {
  carbonMassPct: SHARES,
  hydrogenMassPct: SHARES,
  sulphurMassPct: SHARES,
  nitrogenMassPct: SHARES,
  oxygenMassPct: SHARES,
  gcvBtuPerLb: [5000, 65_000],
} as const;

describeRanges('λ from O2', fields(lambdaFromO2, { fuel: G20, o2DryVolPct: 5 }, { o2DryVolPct: [0.5, 15] }));
describeRanges(
  'λ from CO2',
  fields(
    lambdaFromCo2,
    { fuel: G20, ...PAIR },
    { co2DryVolPct: [3, CO2_MAX], o2DryVolPct: [0.5, 20.946], coPpmDry: [0, 1000] },
  ),
);
describeRanges(
  'combustion products',
  fields(
    combustionProducts,
    { fuel: G20, lambda: 1.2, airVapourMolPerMol: 0 },
    { lambda: [1, 4], airVapourMolPerMol: [0, 0.25] },
  ),
);
describeRanges('CO2 from O2', fields(co2FromO2, { fuel: G20, o2DryVolPct: 5 }, { o2DryVolPct: [0, 20.946] }));
describeRanges('O2 from CO2', fields(o2FromCo2, { fuel: G20, co2DryVolPct: 5 }, { co2DryVolPct: [0, CO2_MAX] }));
describeRanges('CO2max of a pair', fields(co2MaxOfPair, PAIR, { o2DryVolPct: [0, 15], co2DryVolPct: [0, 25] }));
describeRanges(
  'excess air from an analysis',
  fields(
    excessAirFromAnalysis,
    { ...PAIR, co2DryVolPct: 2, coPpmDry: 0 },
    { o2DryVolPct: [0, 15], co2DryVolPct: [0, 16], coPpmDry: [0, 100_000] },
  ),
);
describeRanges('excess air from an analysis with 2 % CO', [
  {
    quantity: 'o2DryVolPct',
    min: 1,
    max: 15,
    call: (o2DryVolPct) => excessAirFromAnalysis({ o2DryVolPct, co2DryVolPct: 2, coPpmDry: 20_000 }),
  },
]);
describeRanges(
  'λ by carbon balance',
  fields(
    lambdaFromCarbonBalance,
    { fuel: G20, o2DryVolPct: 5, co2DryVolPct: 9, coPpmDry: 20_000 },
    { o2DryVolPct: [1, 15], co2DryVolPct: [3, 25], coPpmDry: [0, 100_000] },
  ),
);
describeRanges(
  'wet to dry',
  fields(dryFromWet, { wetVolPct: 4, waterVapourVolPct: 20 }, { waterVapourVolPct: [0, 30], wetVolPct: [0, 80] }),
);
describeRanges('dry O2 from wet O2', fields(dryO2FromWetO2, { fuel: G20, o2WetVolPct: 4 }, { o2WetVolPct: [0, 12] }));
describeRanges('CO air-free from O2', fields(coAirFreeFromO2, PAIR, { coPpmDry: [0, 100_000], o2DryVolPct: [0, 15] }));
describeRanges(
  'CO air-free from CO2',
  fields(coAirFreeFromCo2, { fuel: G20, ...PAIR }, { coPpmDry: [0, 100_000], co2DryVolPct: [3, CO2_MAX + 0.5] }),
);
describeRanges(
  'CO air-free from the ratio',
  fields(coAirFreeFromRatio, { fuel: G20, coToCo2Ratio: 0.004 }, { coToCo2Ratio: [0, 0.1] }),
);
describeRanges('CO/CO2 ratio', fields(coToCo2Ratio, PAIR, { coPpmDry: [0, 100_000], co2DryVolPct: [3, 25] }));
describeRanges(
  'reference oxygen',
  fields(
    atReferenceOxygen,
    { concentration: 80, o2DryVolPct: 5, referenceO2DryVolPct: 3, base: '20.9' },
    { concentration: [0, 1_000_000], o2DryVolPct: [0, 15], referenceO2DryVolPct: [0, 15] },
  ),
);
describeRanges(
  'mg/m³',
  fields(mgPerM3FromPpm, { pollutant: 'co', ppmDry: 1, volumeAt: '0 °C' }, { ppmDry: [0, 100_000] }),
);
describeRanges(
  'mg/kWh',
  fields(
    mgPerKwhFromPpm,
    { fuel: G20, pollutant: 'co', ppmDry: 1, o2DryVolPct: 3, basis: 'net' },
    { ppmDry: [0, 100_000], o2DryVolPct: [0, 15] },
  ),
);
describeRanges(
  'ppm from mg/kWh',
  fields(
    ppmFromMgPerKwh,
    { fuel: G20, pollutant: 'co', mgPerKwh: 1, o2DryVolPct: 3, basis: 'net' },
    { mgPerKwh: [0, 100_000], o2DryVolPct: [0, 15] },
  ),
);
describeRanges('NOx from NO', [{ quantity: 'ppmDry', min: 0, max: 100_000, call: noxPpmFromNoPpm }]);
describeRanges('Fd by Method 19', fields(fdFromUltimateAnalysis, ANALYSIS, ANALYSIS_RANGES));
describeRanges('Fc by Method 19', fields(fcFromUltimateAnalysis, ANALYSIS, ANALYSIS_RANGES));
describeRanges(
  'Fo from F-factors',
  fields(
    foFromFFactors,
    { fdDscfPerMmbtu: 8710, fcScfPerMmbtu: 1040 },
    { fdDscfPerMmbtu: [500, 20_000], fcScfPerMmbtu: [500, 20_000] },
  ),
);
describeRanges(
  'lb/MMBtu',
  fields(
    lbPerMmbtuFromPpm,
    { pollutant: 'nox', ppmDry: 80, o2DryVolPct: 3, fdDscfPerMmbtu: 8710 },
    { ppmDry: [0, 100_000], o2DryVolPct: [0, 15], fdDscfPerMmbtu: [500, 20_000] },
  ),
);
describeRanges(
  'ppm from lb/MMBtu',
  fields(
    ppmFromLbPerMmbtu,
    { pollutant: 'nox', lbPerMmbtu: 0.1, o2DryVolPct: 3, fdDscfPerMmbtu: 8710 },
    { lbPerMmbtu: [0, 100], o2DryVolPct: [0, 15], fdDscfPerMmbtu: [500, 20_000] },
  ),
);
describeRanges('mg/kWh from lb/MMBtu', [
  { quantity: 'lbPerMmbtu', min: 0, max: 100, call: mgPerKwhGrossFromLbPerMmbtu },
]);
describeRanges(
  'K of a pollutant',
  fields(
    lbPerScfPerPpm,
    { molarMassGPerMol: 46, scfPerLbMol: 385.3 },
    { molarMassGPerMol: [1, 200], scfPerLbMol: [350, 400] },
  ),
);
describeRanges(
  'Fo',
  fields(
    foPlausibility,
    { fuel: G20, ...PAIR },
    { o2DryVolPct: [0, 20.9], co2DryVolPct: [0.1, 25], coPpmDry: [0, 100_000] },
  ),
);
describeRanges(
  'humid air',
  fields(
    airVapourMolPerMol,
    { airC: 20, relativeHumidityPct: 50, pressureKpaAbs: 100 },
    { airC: [0, 60], relativeHumidityPct: [0, 100], pressureKpaAbs: [50, 110] },
  ),
);
describeRanges(
  'flue dew point',
  fields(
    flueDewPointC,
    { fuel: G20, lambda: 1.2, pressureKpaAbs: 100, air: { airC: 20, relativeHumidityPct: 0 } },
    { lambda: [1, 4], pressureKpaAbs: [50, 110] },
  ),
);
describeRanges(
  'gas dew point',
  fields(
    gasDewPointC,
    { waterVapourMolFraction: 0.15, pressureKpaAbs: 100 },
    { waterVapourMolFraction: [0.013, 1], pressureKpaAbs: [50, 110] },
  ),
);
describeRanges(
  'enthalpy',
  fields(enthalpyDifferenceKjPerMol, { component: 'n2', fromC: 20, toC: 100 }, { fromC: [-40, 700], toC: [-40, 700] }),
);
describeRanges(
  'efficiency',
  fields(combustionEfficiency, EFFICIENCY, {
    o2DryVolPct: [0.5, 15],
    flueGasC: [20, 600],
    airC: [-40, 60],
    airRelativeHumidityPct: [0, 100],
    pressureKpaAbs: [50, 110],
  }),
);
describeRanges(
  'efficiency with warm air',
  fields(combustionEfficiency, { ...EFFICIENCY, airC: 40 }, { flueGasC: [40, 600] }),
);
describeRanges(
  'Siegert from O2',
  fields(
    flueLossFromO2,
    { constants: CONSTANTS, flueGasC: 150, airC: 20, o2DryVolPct: 5 },
    { flueGasC: [60, 500], airC: [-40, 60], o2DryVolPct: [0, 12] },
  ),
);
describeRanges(
  'Siegert from CO2',
  fields(
    flueLossFromCo2,
    { constants: CONSTANTS, flueGasC: 150, airC: 20, co2DryVolPct: 9, co2MaxDryVolPct: 11.8 },
    { flueGasC: [60, 500], airC: [-40, 60], co2DryVolPct: [3, 20], co2MaxDryVolPct: [5, 21] },
  ),
);
describeRanges(
  'Siegert A1',
  fields(siegertA1, { constants: CONSTANTS, co2MaxDryVolPct: 11.8 }, { co2MaxDryVolPct: [5, 21] }),
);
describeRanges(
  'stack loss',
  fields(
    stackLossShortForm,
    { fuel: G20, o2DryVolPct: 5, flueGasC: 150, airC: 20 },
    { o2DryVolPct: [0.5, 15], flueGasC: [60, 600], airC: [-40, 60] },
  ),
);
describeRanges(
  'dry-gas loss',
  fields(
    dryGasLoss,
    { dryGasKgPerKgFuel: 20, cpKjPerKgK: 1, riseK: 150, hhvKjPerKg: 50_000 },
    { dryGasKgPerKgFuel: [0, 100], cpKjPerKgK: [0.8, 1.3], riseK: [0, 640], hhvKjPerKg: [5000, 150_000] },
  ),
);
describeRanges(
  'gross from net',
  fields(grossFromNetEfficiency, { fuel: G20, efficiencyNetPct: 98 }, { efficiencyNetPct: [1, 115] }),
);
describeRanges(
  'net from gross',
  fields(netFromGrossEfficiency, { fuel: G20, efficiencyGrossPct: 88 }, { efficiencyGrossPct: [1, 115] }),
);
describeRanges(
  'fuel saving',
  fields(
    fuelSavingPct,
    { efficiencyBeforePct: 80, efficiencyAfterPct: 90 },
    { efficiencyBeforePct: [1, 115], efficiencyAfterPct: [1, 115] },
  ),
);
describeRanges(
  'condensate per kWh',
  fields(condensateKgPerKwh, { fuel: G20, basis: 'net', condensedFraction: 0.5 }, { condensedFraction: [0, 1] }),
);
describeRanges(
  'condensate per hour',
  fields(
    condensateLPerH,
    { fuel: G20, inputKwGross: 30, condensedFraction: 0.5 },
    { inputKwGross: [0, 10_000], condensedFraction: [0, 1] },
  ),
);
describeRanges(
  'combustion air per kWh',
  fields(
    combustionAirM3PerKwhGross,
    { fuel: G20, lambda: 1.2, airC: 20, pressureKpaAbs: 100 },
    { lambda: [1, 4], airC: [-40, 60], pressureKpaAbs: [50, 110] },
  ),
);
describeRanges(
  'combustion air per hour',
  fields(
    combustionAirM3PerH,
    { fuel: G20, lambda: 1.2, airC: 20, pressureKpaAbs: 100, inputKwGross: 30 },
    { inputKwGross: [0, 10_000] },
  ),
);
describeRanges('gas properties', [
  {
    quantity: 'pressureKpaAbs',
    min: 90,
    max: 110,
    call: (pressureKpaAbs) => gasProperties({ fuel: G20, state: { ...EN_437_STATE, pressureKpaAbs } }),
  },
  {
    quantity: 'temperatureC',
    min: 0,
    max: 30,
    call: (temperatureC) =>
      gasProperties({ fuel: G20, state: { ...EN_437_STATE, metering: { kind: 'ideal-gas', temperatureC } } }),
  },
]);
describeRanges('an oil', [
  {
    quantity: 'hhvMjPerKg',
    min: 30,
    max: 55,
    call: (hhvMjPerKg) => oilFuel({ name: 'oil', family: 'distillate-oil', massPct: OIL_2.massPct, hhvMjPerKg }),
  },
]);
const TYPICAL_HHV = unwrap(gasProperties({ fuel: G20, state: EN_437_STATE })).hhvMjPerM3;
describeRanges('supplier data of a gas', [
  {
    quantity: 'co2MaxDryVolPct',
    min: 5,
    max: 21,
    call: (co2MaxDryVolPct) => gasFuelWithSupplierData(G20, { co2MaxDryVolPct }),
  },
  {
    quantity: 'relativeDensity',
    min: 0.3,
    max: 3,
    call: (relativeDensity) => gasFuelWithSupplierData(G20, { relativeDensity }),
  },
  {
    quantity: 'hhvMjPerM3',
    min: TYPICAL_HHV / 2,
    max: TYPICAL_HHV * 2,
    call: (hhvMjPerM3) => gasFuelWithSupplierData(G20, { heatingValue: { hhvMjPerM3, state: EN_437_STATE } }),
  },
]);
describeRanges('supplier data of an oil', [
  {
    quantity: 'co2MaxDryVolPct',
    min: 5,
    max: 21,
    call: (co2MaxDryVolPct) => oilFuelWithSupplierData(OIL_2, { co2MaxDryVolPct }),
  },
  {
    quantity: 'hhvMjPerKg',
    min: 22.7,
    max: 90.8,
    call: (hhvMjPerKg) => oilFuelWithSupplierData(OIL_2, { hhvMjPerKg }),
  },
]);
describeRanges('saturation pressure', [
  { quantity: 'temperatureK', min: 273.15, max: 647.096, call: saturationPressureMpaAbs },
]);
describeRanges('saturation temperature', [
  { quantity: 'pressureMpaAbs', min: 611.213e-6, max: 22.064, call: saturationTemperatureK },
]);

describe('edges that do not scale with the bound', () => {
  it('lets CO2 read half a percent above CO2max, as an instrument may, and no more', () => {
    const at = (co2DryVolPct: number) => coAirFreeFromCo2({ fuel: G20, coPpmDry: 50, co2DryVolPct });
    expect(at(CO2_MAX + 0.499)).toMatchObject({ ok: true });
    expect(at(CO2_MAX + 0.502)).toMatchObject({ ok: false });
  });

  it('takes dry air at any temperature, but not at none', () => {
    const at = (airC: number) => airVapourMolPerMol({ airC, relativeHumidityPct: 0, pressureKpaAbs: 100 });
    expect(at(-60)).toEqual({ ok: true, value: 0 });
    expect(at(Number.NaN)).toMatchObject({ ok: false, error: { code: 'out-of-range', quantity: 'airC' } });
  });
});
