/** CO that climbs from sample to sample at a firing point held still: a stop even while it is low. */
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import { BURNER_OFF } from '../makeSafe.ts';
import { inputsOf, type Measured } from '../measured.ts';
import { firingReasons } from '../proof/firingReasons.ts';
import { proofOf } from '../proof/proofOf.ts';
import type { RunContext } from '../runContext.ts';
import type { SampleRow } from '../sampleRows.ts';

/** Two rises in a row; one is noise. */
const SAMPLES = 3;

export function coRising(context: RunContext): readonly Finding[] {
  const series = Map.groupBy(
    context.rows.filter((row) => row.point !== null && context.firingPoints.has(row.point)),
    (row) => `${row.group}|${row.point}`,
  );
  return [...series.values()].flatMap((rows) => rising(rows, context));
}

function rising(rows: readonly SampleRow[], context: RunContext): readonly Finding[] {
  // Right after a change of rate CO may well climb for a moment; only settled samples count.
  const settled = rows
    .flatMap((row) => row.get('coPpm') ?? [])
    .filter((co) => firingReasons(co, context).length === 0)
    .slice(-SAMPLES);
  const [first] = settled;
  if (
    first === undefined ||
    settled.length < SAMPLES ||
    !settled.every((co, at) => isHigher(co, settled[at - 1], context))
  ) {
    return [];
  }
  return [
    buildFinding({
      subject: `ceiling:co-rising@${first.point}`,
      verdict: 'stop',
      proof: proofOf(settled, context),
      blocks: ['firing', 'leaving', 'registration'],
      basis: {
        from: 'ceiling',
        source: { kind: 'common-practice', source: 'CO rising or unstable: stop, even if low' },
        formula: 'each sample above the one before by more than counts as steady',
        inputs: inputsOf(settled),
      },
      makeSafe: BURNER_OFF,
    }),
  ];
}

function isHigher(co: Measured, before: Measured | undefined, context: RunContext): boolean {
  if (before === undefined) return true;
  const { coPpm, coPct } = context.sheet.steady;
  return co.value - before.value > Math.max(coPpm, (before.value * coPct) / 100);
}
