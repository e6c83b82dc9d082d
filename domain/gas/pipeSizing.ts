/**
 * Gas pipe capacity and diameter by the two code equations.
 *
 * Formula  low pressure (< 1.5 psi): D = Q^0.381/(19.17·(ΔH/(Cr·L))^0.206)
 *          high pressure (≥ 1.5 psi): D = Q^0.381/(18.93·((P1² − P2²)·Y/(Cr·L))^0.206); both also solved for Q
 *          Cr = 0.00354·S·T·(Z/S)^0.152, T 520 °R
 * Units    inside: D in, Q ft³/h at 60 °F and 30 inHg, ΔH in w.c., L ft equivalent, P psia. Outside: mm, m³/h at the same
 *          60 °F and 30 inHg, kPa, m
 * Valid    D 5–300 mm; L 0.3–2000 m; Q 0.01–10 000 m³/h; low-pressure drop up to 1.5 psi; high-pressure inlet at most
 *          1000 kPa absolute
 * Errors   0.5–0.8 % above the printed tables; where the code table governs use the table. The 2 psi and 5 psi tables of the
 *          2018 code do not follow the equation (up to 5 % off). ΔH is the drop, not the supply pressure
 * Source   International Fuel Gas Code 2018 App. A.4/NFPA 54 (constants from memory, confirmed by printed table cells)
 * Checked  tests/checks/gas/pipeSizing.test.ts
 */
import {
  cubicFeetToCubicMetres,
  cubicMetresToCubicFeet,
  inchesToMm,
  kpaToInWc,
  kpaToPsi,
  metresToFeet,
  mmToInches,
  psiToKpa,
} from '../quantity/conversions.ts';
import type { KpaAbs, M3PerH, Metre } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';

export type PipeGas = { readonly cr: number; readonly y: number };

export const PIPE_GASES = {
  /** Specific gravity 0.60. */
  'natural-gas': { cr: 0.6094, y: 0.9992 },
  /** Specific gravity 1.50, the pipe tables' figure. */
  propane: { cr: 1.2462, y: 0.991 },
} as const satisfies Record<string, PipeGas>;

/** Schedule 40 steel, inside diameters in inches as tables print them, by nominal size. */
export const SCHEDULE_40_INSIDE_DIAMETER_IN = {
  '1/2': 0.622,
  '3/4': 0.824,
  '1': 1.049,
  '1-1/4': 1.38,
  '1-1/2': 1.61,
  '2': 2.067,
} as const;

const LOW_PRESSURE_CONSTANT = 19.17;
const HIGH_PRESSURE_CONSTANT = 18.93;
const FLOW_EXPONENT = 0.381;
const DROP_EXPONENT = 0.206;
const FLOWING_TEMPERATURE_RANKINE = 520;
const LOW_PRESSURE_LIMIT_KPA = psiToKpa(1.5);

export type LowPressureRun = {
  readonly gas: PipeGas;
  readonly equivalentLengthM: Metre;
  readonly pressureDropKpa: number;
};
export type HighPressureRun = {
  readonly gas: PipeGas;
  readonly equivalentLengthM: Metre;
  readonly inletKpaAbs: KpaAbs;
  readonly outletKpaAbs: KpaAbs;
};
type OfDiameter = { readonly insideDiameterMm: number };
type OfFlow = { readonly flowM3PerH: M3PerH };

export function lowPressurePipeCapacityM3PerH(input: LowPressureRun & OfDiameter): Result<M3PerH, OutOfRange> {
  const outside = checkDiameter(input) ?? checkLowPressureRun(input);
  return outside ? err(outside) : ok(flowAt(input.insideDiameterMm, lowPressureTerm(input)));
}

export function lowPressurePipeDiameterMm(input: LowPressureRun & OfFlow): Result<number, OutOfRange> {
  const outside = checkFlow(input) ?? checkLowPressureRun(input);
  return outside ? err(outside) : ok(diameterFor(input.flowM3PerH, lowPressureTerm(input)));
}

export function highPressurePipeCapacityM3PerH(input: HighPressureRun & OfDiameter): Result<M3PerH, OutOfRange> {
  const outside = checkDiameter(input) ?? checkHighPressureRun(input);
  return outside ? err(outside) : ok(flowAt(input.insideDiameterMm, highPressureTerm(input)));
}

export function highPressurePipeDiameterMm(input: HighPressureRun & OfFlow): Result<number, OutOfRange> {
  const outside = checkFlow(input) ?? checkHighPressureRun(input);
  return outside ? err(outside) : ok(diameterFor(input.flowM3PerH, highPressureTerm(input)));
}

/** Cr of a gas from its specific gravity and viscosity (centipoise). */
export function pipeGasCr(input: {
  readonly specificGravity: number;
  readonly viscosityCp: number;
}): Result<number, OutOfRange> {
  const { specificGravity, viscosityCp } = input;
  const outside =
    checkRange('specificGravity', specificGravity, 0.3, 3) ?? checkRange('viscosityCp', viscosityCp, 0.004, 0.03);
  if (outside) return err(outside);
  return ok(0.00354 * specificGravity * FLOWING_TEMPERATURE_RANKINE * (viscosityCp / specificGravity) ** 0.152);
}

function lowPressureTerm(run: LowPressureRun): number {
  const perFoot = kpaToInWc(run.pressureDropKpa) / (run.gas.cr * metresToFeet(run.equivalentLengthM));
  return LOW_PRESSURE_CONSTANT * perFoot ** DROP_EXPONENT;
}

function highPressureTerm(run: HighPressureRun): number {
  const squares = kpaToPsi(run.inletKpaAbs) ** 2 - kpaToPsi(run.outletKpaAbs) ** 2;
  const perFoot = (squares * run.gas.y) / (run.gas.cr * metresToFeet(run.equivalentLengthM));
  return HIGH_PRESSURE_CONSTANT * perFoot ** DROP_EXPONENT;
}

function flowAt(insideDiameterMm: number, term: number): M3PerH {
  return cubicFeetToCubicMetres((mmToInches(insideDiameterMm) * term) ** (1 / FLOW_EXPONENT));
}

function diameterFor(flowM3PerH: M3PerH, term: number): number {
  return inchesToMm(cubicMetresToCubicFeet(flowM3PerH) ** FLOW_EXPONENT / term);
}

function checkDiameter(input: OfDiameter): OutOfRange | null {
  return checkRange('insideDiameterMm', input.insideDiameterMm, 5, 300);
}

function checkFlow(input: OfFlow): OutOfRange | null {
  return checkRange('flowM3PerH', input.flowM3PerH, 0.01, 10_000);
}

function checkLength(equivalentLengthM: Metre): OutOfRange | null {
  return checkRange('equivalentLengthM', equivalentLengthM, 0.3, 2000);
}

function checkLowPressureRun(run: LowPressureRun): OutOfRange | null {
  return (
    checkLength(run.equivalentLengthM) ??
    checkRange('pressureDropKpa', run.pressureDropKpa, 0.001, LOW_PRESSURE_LIMIT_KPA)
  );
}

function checkHighPressureRun(run: HighPressureRun): OutOfRange | null {
  return (
    checkLength(run.equivalentLengthM) ??
    checkRange('inletKpaAbs', run.inletKpaAbs, 60, 1000) ??
    checkRange('outletKpaAbs', run.outletKpaAbs, 50, run.inletKpaAbs - 0.1)
  );
}
