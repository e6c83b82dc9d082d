/** Whether enough samples far enough apart agree, as the sheet has it, so that the firing point is steady. */
import type { QuantityKey } from '../../quantity/quantities.ts';
import type { NotProvenReason } from '../finding.ts';
import type { Measured } from '../measured.ts';
import type { RunContext } from '../runContext.ts';
import type { SampleRow } from '../sampleRows.ts';

/** Two key presses are never timed to the second. */
const APART_SLACK_S = 1;
/** Decimal fractions are not exact in binary: 5.2 − 5.0 is a hair more than 0.2. */
const ROUNDING_SLACK = 1e-9;

export function steadyReasons(one: Measured, context: RunContext): readonly NotProvenReason[] {
  if (one.point === null || !context.firingPoints.has(one.point)) return [];
  const rows = context.seriesOf(one);
  const oldest = oldestPicked(rows, one.quantity, context);
  if (oldest === null) return ['too-few-samples'];
  return isSteady(rows.slice(rows.indexOf(oldest)), context) ? [] : ['not-steady'];
}

/** From the newest back, each at least the sheet's time before the one picked last; null: there are not enough of them. */
function oldestPicked(rows: readonly SampleRow[], quantity: QuantityKey, context: RunContext): SampleRow | null {
  const { minSamples, apartS } = context.sheet.steady;
  let [lastMs, count] = [Number.POSITIVE_INFINITY, 0];
  for (const row of rows.toReversed()) {
    const atMs = row.get(quantity)?.atMs ?? null;
    if (atMs === null || lastMs - atMs < (apartS - APART_SLACK_S) * 1000) continue;
    [lastMs, count] = [atMs, count + 1];
    if (count === minSamples) return row;
  }
  return null;
}

function isSteady(rows: readonly SampleRow[], context: RunContext): boolean {
  const { o2Points, coPpm, coPct, flueK } = context.sheet.steady;
  const largestCo = Math.max(0, ...valuesOf(rows, 'coPpm'));
  return (
    spread(valuesOf(rows, 'o2DryVolPct')) <= o2Points + ROUNDING_SLACK &&
    spread(valuesOf(rows, 'coPpm')) <= Math.max(coPpm, (largestCo * coPct) / 100) + ROUNDING_SLACK &&
    spread(valuesOf(rows, 'flueGasC')) <= flueK + ROUNDING_SLACK
  );
}

function valuesOf(rows: readonly SampleRow[], quantity: QuantityKey): readonly number[] {
  return rows.flatMap((row) => row.get(quantity)?.value ?? []);
}

function spread(values: readonly number[]): number {
  return values.length === 0 ? 0 : Math.max(...values) - Math.min(...values);
}
