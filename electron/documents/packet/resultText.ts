/** A number that was worked out, with as many figures as its own uncertainty leaves it. */
import { resultUnit } from '../../../domain/judgement/resultUnit.ts';
import type { UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import type { OpenFinding } from './packetView.ts';
import { computedText, spreadText } from './quantityText.ts';

export type Result = { readonly value: string; readonly unit: string; readonly plusMinus: string | null };
export type ResultTexts = { readonly text: string; readonly plusMinus: string | null; readonly unit: string };

const USUAL_DECIMALS = 2;
const MOST_DECIMALS = 8;

/** In the asked system where it writes the unit differently, else as it was worked out. Decimals count in the unit it came in. */
export function resultTexts(result: Result, unitSystem: UnitSystem, decimals: number): ResultTexts {
  const system = computedText(result.value, result.unit, decimals, unitSystem) === null ? 'metric' : unitSystem;
  const shown = computedText(result.value, result.unit, decimals, system);
  return {
    text: shown?.text ?? result.value,
    unit: shown?.unit ?? result.unit,
    plusMinus: result.plusMinus === null ? null : spreadText(result.plusMinus, result.unit, decimals, system),
  };
}

export function resultText(result: Result, unitSystem: UnitSystem): string {
  const { text, unit, plusMinus } = resultTexts(result, unitSystem, meaningfulDecimals(result, USUAL_DECIMALS));
  return `${text}${plusMinus === null ? '' : ` ± ${plusMinus}`}\u00a0${unit}`.trim();
}

export function resultOf(finding: OpenFinding): Result | null {
  const { result } = finding.basis;
  return result && { ...result, unit: resultUnit(finding.subject, result.unit) };
}

/** Two figures of the spread, and never more than what was stated or three figures of the value need. */
export function meaningfulDecimals({ value, unit, plusMinus }: Result, stated: number): number {
  // Things that are counted.
  if (unit === '' && plusMinus === null && Number.isInteger(Number(value))) return 0;
  const spread = plusMinus === null ? 0 : Math.abs(Number(plusMinus));
  const size = Math.abs(Number(value));
  const forValue = size > 0 ? 2 - Math.floor(Math.log10(size)) : stated;
  const decimals = spread > 0 ? Math.min(1 - Math.floor(Math.log10(spread)), Math.max(stated, forValue)) : forValue;
  return Math.min(MOST_DECIMALS, Math.max(0, decimals));
}
