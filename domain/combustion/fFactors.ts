/**
 * EPA F-factors: flue gas or CO2 volume per heat input, and emissions per MMBtu from them.
 *
 * Formula  Fd = dry flue/HHV; Fw = (dry flue + water)/HHV; Fc = CO2/HHV, at λ = 1, 385.33 scf per lb-mol;
 *          Method 19: Fd = 10⁶·(3.64 H + 1.53 C + 0.57 S + 0.14 N − 0.46 O)/GCV; Fc = 10⁶·0.321·C/GCV;
 *          Fo = 0.209·Fd/Fc; E = K·ppm·Fd·20.9/(20.9 − O2), K = M/385.3·10⁻⁶
 * Units    dscf, wscf, scf CO2 per MMBtu (HHV); scf at 68 °F, 29.92 inHg; mass %, Btu/lb; lb/MMBtu
 * Valid    O2 0–15 %; ppm 0–100 000; GCV 5000–65 000 Btu/lb; F-factors 500–20 000
 * Errors   published averages differ from one gas by 1–2 %; use the published factor for EPA reports
 * Source   40 CFR 60 App. A-7 Method 19; 40 CFR 75 App. F (0.321 from memory)
 * Checked  tests/checks/combustion/fFactors.test.ts, coAndNox.test.ts
 */
import { BTU_PER_MMBTU, KG_PER_LB, KJ_PER_BTU, KWH_PER_MMBTU } from '../quantity/conversions.ts';
import type { DryVolPct, PpmDry } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { MOLAR_MASS_CO2_G_PER_MOL, O2_IN_AIR_EPA_VOL_PCT } from './combustionConstants.ts';
import type { Pollutant } from './emissionMass.ts';
import type { Fuel } from './fuel.ts';

const SCF_PER_LB_MOL = 385.33;
const MOL_PER_LB_MOL = KG_PER_LB * 1000;

/** K in (lb/scf)/ppm, as 40 CFR 75 App. F prints it for NOx; CO in the same way from 28.01 g/mol. */
const LB_PER_SCF_PER_PPM: Readonly<Record<Pollutant, number>> = { nox: 1.194e-7, co: 7.269e-8 };

export type FFactors = {
  readonly fdDscfPerMmbtu: number;
  readonly fwWscfPerMmbtu: number;
  readonly fcScfPerMmbtu: number;
  readonly co2KgPerMmbtu: number;
};

export function fFactors(fuel: Fuel): FFactors {
  const mmbtuPerAmount = fuel.hhv25CKj / KJ_PER_BTU / BTU_PER_MMBTU;
  const scfPerMmbtu = (mol: number) => ((mol / MOL_PER_LB_MOL) * SCF_PER_LB_MOL) / mmbtuPerAmount;
  return {
    fdDscfPerMmbtu: scfPerMmbtu(fuel.dryFlueMol),
    fwWscfPerMmbtu: scfPerMmbtu(fuel.dryFlueMol + fuel.waterMol),
    fcScfPerMmbtu: scfPerMmbtu(fuel.co2Mol),
    co2KgPerMmbtu: (fuel.co2Mol * MOLAR_MASS_CO2_G_PER_MOL) / 1000 / mmbtuPerAmount,
  };
}

type UltimateAnalysis = {
  readonly carbonMassPct: number;
  readonly hydrogenMassPct: number;
  readonly sulphurMassPct: number;
  readonly nitrogenMassPct: number;
  readonly oxygenMassPct: number;
  readonly gcvBtuPerLb: number;
};

export function fdFromUltimateAnalysis(input: UltimateAnalysis): Result<number, OutOfRange> {
  const outside = checkAnalysis(input);
  if (outside) return err(outside);
  const dscfPer100Lb =
    3.64 * input.hydrogenMassPct +
    1.53 * input.carbonMassPct +
    0.57 * input.sulphurMassPct +
    0.14 * input.nitrogenMassPct -
    0.46 * input.oxygenMassPct;
  return ok((BTU_PER_MMBTU * dscfPer100Lb) / input.gcvBtuPerLb);
}

export function fcFromUltimateAnalysis(input: UltimateAnalysis): Result<number, OutOfRange> {
  const outside = checkAnalysis(input);
  if (outside) return err(outside);
  return ok((BTU_PER_MMBTU * 0.321 * input.carbonMassPct) / input.gcvBtuPerLb);
}

/** The Fo a pair of O2 and CO2 readings should show, from the published factors. */
export function foFromFFactors(input: {
  readonly fdDscfPerMmbtu: number;
  readonly fcScfPerMmbtu: number;
}): Result<number, OutOfRange> {
  const outside =
    checkFFactor('fdDscfPerMmbtu', input.fdDscfPerMmbtu) ?? checkFFactor('fcScfPerMmbtu', input.fcScfPerMmbtu);
  if (outside) return err(outside);
  return ok(((O2_IN_AIR_EPA_VOL_PCT / 100) * input.fdDscfPerMmbtu) / input.fcScfPerMmbtu);
}

type AtO2 = { readonly pollutant: Pollutant; readonly o2DryVolPct: DryVolPct; readonly fdDscfPerMmbtu: number };

export function lbPerMmbtuFromPpm(input: AtO2 & { readonly ppmDry: PpmDry }): Result<number, OutOfRange> {
  const outside = checkRange('ppmDry', input.ppmDry, 0, 100_000) ?? checkAtO2(input);
  return outside ? err(outside) : ok(input.ppmDry * lbPerMmbtuPerPpm(input));
}

export function ppmFromLbPerMmbtu(input: AtO2 & { readonly lbPerMmbtu: number }): Result<PpmDry, OutOfRange> {
  const outside = checkRange('lbPerMmbtu', input.lbPerMmbtu, 0, 100) ?? checkAtO2(input);
  return outside ? err(outside) : ok(input.lbPerMmbtu / lbPerMmbtuPerPpm(input));
}

/** Both on the higher heating value. */
export function mgPerKwhGrossFromLbPerMmbtu(lbPerMmbtu: number): Result<number, OutOfRange> {
  const outside = checkRange('lbPerMmbtu', lbPerMmbtu, 0, 100);
  return outside ? err(outside) : ok((lbPerMmbtu * KG_PER_LB * 1_000_000) / KWH_PER_MMBTU);
}

/** K by its definition, for pollutants and molar volumes other than the printed ones. */
export function lbPerScfPerPpm(input: {
  readonly molarMassGPerMol: number;
  readonly scfPerLbMol: number;
}): Result<number, OutOfRange> {
  const outside =
    checkRange('molarMassGPerMol', input.molarMassGPerMol, 1, 200) ??
    checkRange('scfPerLbMol', input.scfPerLbMol, 350, 400);
  return outside ? err(outside) : ok(input.molarMassGPerMol / input.scfPerLbMol / 1_000_000);
}

function lbPerMmbtuPerPpm(input: AtO2): number {
  return (
    (LB_PER_SCF_PER_PPM[input.pollutant] * input.fdDscfPerMmbtu * O2_IN_AIR_EPA_VOL_PCT) /
    (O2_IN_AIR_EPA_VOL_PCT - input.o2DryVolPct)
  );
}

function checkAtO2(input: AtO2): OutOfRange | null {
  return checkRange('o2DryVolPct', input.o2DryVolPct, 0, 15) ?? checkFFactor('fdDscfPerMmbtu', input.fdDscfPerMmbtu);
}

function checkFFactor(quantity: string, value: number): OutOfRange | null {
  return checkRange(quantity, value, 500, 20_000);
}

function checkAnalysis(input: UltimateAnalysis): OutOfRange | null {
  return (
    checkRange('carbonMassPct', input.carbonMassPct, 0, 100) ??
    checkRange('hydrogenMassPct', input.hydrogenMassPct, 0, 100) ??
    checkRange('sulphurMassPct', input.sulphurMassPct, 0, 100) ??
    checkRange('nitrogenMassPct', input.nitrogenMassPct, 0, 100) ??
    checkRange('oxygenMassPct', input.oxygenMassPct, 0, 100) ??
    checkRange('gcvBtuPerLb', input.gcvBtuPerLb, 5000, 65_000)
  );
}
