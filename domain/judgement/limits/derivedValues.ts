/** Quantities nobody types although sheets and ceilings limit them: CO air-free, CO/CO2, supply minus return. */
import { coAirFreeFromCo2, coAirFreeFromO2 } from '../../combustion/coAirFree.ts';
import type { QuantityKey } from '../../quantity/quantities.ts';
import { inputsOf, type Measured } from '../measured.ts';
import { orNull } from '../orNull.ts';
import { proofOf } from '../proof/proofOf.ts';
import type { RunContext } from '../runContext.ts';
import { pairOf, type SampleRow } from '../sampleRows.ts';
import type { JudgedValue } from './judgedValue.ts';

export function derivedValues(rows: readonly SampleRow[], context: RunContext): readonly JudgedValue[] {
  return rows.flatMap((row) => [
    ...coAirFree(row, context),
    ...coToCo2(row, context),
    ...supplyMinusReturn(row, context),
  ]);
}

/** Highest O2 for which dilution can be computed away (the formula's own range). */
const MAX_O2_PCT = 15;
/** Below it a small error of the CO2 reading is a large one of the result (the formula's own range). */
const MIN_CO2_PCT = 3;

function coAirFree(row: SampleRow, context: RunContext): readonly JudgedValue[] {
  const co = row.get('coPpm');
  const o2 = row.get('o2DryVolPct');
  const co2 = row.get('co2DryVolPct');
  if (co === undefined) return [];
  if (o2 !== undefined && o2.value <= MAX_O2_PCT) {
    const from = (coPpmDry: number, o2DryVolPct: number) =>
      orNull(coAirFreeFromO2({ coPpmDry, o2DryVolPct: Math.min(MAX_O2_PCT, Math.max(0, o2DryVolPct)) }));
    return derived('coAirFreePpm', 'ppm', 'CO · 20.9 / (20.9 − O₂)', row, [co, o2], context, {
      value: from(co.value, o2.value),
      lowest: from(Math.max(0, co.lowest), o2.lowest),
      highest: co.highest === Number.POSITIVE_INFINITY ? co.highest : from(co.highest, o2.highest),
    });
  }
  if (o2 === undefined && co2 !== undefined && co2.value >= MIN_CO2_PCT) {
    const { co2MaxDryVolPct } = context.fuel;
    const from = (coPpmDry: number, co2DryVolPct: number) => {
      const co2Pct = Math.min(co2MaxDryVolPct, Math.max(MIN_CO2_PCT, co2DryVolPct));
      return orNull(coAirFreeFromCo2({ fuel: context.fuel, coPpmDry, co2DryVolPct: co2Pct }));
    };
    return derived('coAirFreePpm', 'ppm', 'CO · CO₂max / CO₂', row, [co, co2], context, {
      value: from(co.value, co2.value),
      lowest: from(Math.max(0, co.lowest), co2.highest),
      highest: co.highest === Number.POSITIVE_INFINITY ? co.highest : from(co.highest, co2.lowest),
    });
  }
  return [];
}

function coToCo2(row: SampleRow, context: RunContext): readonly JudgedValue[] {
  const co = row.get('coPpm');
  const co2 = row.get('co2DryVolPct');
  if (co === undefined || co2 === undefined || co2.value < MIN_CO2_PCT) return [];
  const ratio = (coPpm: number, co2Pct: number) => coPpm / (Math.max(MIN_CO2_PCT, co2Pct) * 10_000);
  return derived('coCo2Ratio', '', 'CO / (CO₂ · 10⁴)', row, [co, co2], context, {
    value: ratio(co.value, co2.value),
    lowest: ratio(Math.max(0, co.lowest), co2.highest),
    highest: ratio(co.highest, co2.lowest),
  });
}

function supplyMinusReturn(row: SampleRow, context: RunContext): readonly JudgedValue[] {
  const pair = pairOf(row, 'supplyC', 'returnC');
  if (pair === undefined || row.get('deltaTK') !== undefined) return [];
  const [supply, back] = pair;
  return derived('deltaTK', 'K', 'supply − return', row, [supply, back], context, {
    value: supply.value - back.value,
    lowest: supply.lowest - back.highest,
    highest: supply.highest - back.lowest,
  });
}

function derived(
  quantity: QuantityKey,
  unit: string,
  formula: string,
  row: SampleRow,
  from: readonly Measured[],
  context: RunContext,
  spread: { readonly value: number | null; readonly lowest: number | null; readonly highest: number | null },
): readonly JudgedValue[] {
  const { value, lowest, highest } = spread;
  if (value === null || lowest === null || highest === null) return [];
  const plusMinus = (highest - lowest) / 2;
  return [
    {
      quantity,
      point: row.point,
      value,
      lowest,
      highest,
      readingId: null,
      proof: proofOf(from, context),
      basis: {
        formula,
        inputs: inputsOf(from),
        result: { value, unit, plusMinus: Number.isFinite(plusMinus) && plusMinus > 0 ? plusMinus : null },
      },
    },
  ];
}
