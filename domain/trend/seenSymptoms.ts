/** The symptoms that a visit's numbers add up to against an earlier one, each with the numbers that speak for it. */
import type { Comparison, TrendRow } from './compareVisits.ts';
import { findSymptoms } from './findSymptoms.ts';
import type { Symptom, TrendChange } from './symptoms.ts';

export type SeenSymptom = {
  readonly symptom: Symptom;
  /** Where it was seen; null: of the appliance as a whole. */
  readonly point: string | null;
  readonly against: 'last' | 'baseline';
  readonly rows: readonly { readonly row: TrendRow; readonly comparison: Comparison }[];
};

/** Against the last visit first: what moved since then is the fresher news. */
export function seenSymptoms(rows: readonly TrendRow[], firingPoints: readonly string[]): readonly SeenSymptom[] {
  const seen = new Map<string, SeenSymptom>();
  for (const against of ['last', 'baseline'] as const) {
    for (const point of [null, ...firingPoints]) {
      for (const one of seenAt(point, rows, against)) {
        const key = `${one.symptom.key}@${point ?? ''}`;
        if (!seen.has(key)) seen.set(key, one);
      }
    }
  }
  return [...seen.values()];
}

function seenAt(point: string | null, rows: readonly TrendRow[], against: 'last' | 'baseline'): readonly SeenSymptom[] {
  // What was read at no firing point, the flow say, counts at each of them; only a symptom of this point itself is told here.
  const here = rows.flatMap((row) => {
    const comparison = row[against];
    const isHere = row.point === point || row.point === null;
    return isHere && comparison !== null && isMoved(comparison) ? [{ row, comparison }] : [];
  });
  const changes = here.map(({ row, comparison }) => changeOf(row, comparison));
  return findSymptoms(changes).flatMap((symptom) => {
    const speaking = here.filter(({ row, comparison }) =>
      completeSets(symptom, changes).some((set) => set.some((change) => isSame(change, changeOf(row, comparison)))),
    );
    const isOfThisPoint = speaking.some(({ row }) => row.point === point);
    return isOfThisPoint ? [{ symptom, point, against, rows: speaking }] : [];
  });
}

type Moved = Comparison & { readonly movement: TrendChange['moved'] };

function isMoved(comparison: Comparison): comparison is Moved {
  return comparison.movement !== null && comparison.movement !== 'unclear';
}

function changeOf(row: TrendRow, comparison: Moved): TrendChange {
  return { quantity: row.trend, moved: comparison.movement };
}

function completeSets(symptom: Symptom, changes: readonly TrendChange[]): Symptom['whenAnyOf'] {
  return symptom.whenAnyOf.filter((set) => set.every((one) => changes.some((change) => isSame(one, change))));
}

function isSame(one: TrendChange, other: TrendChange): boolean {
  return one.quantity === other.quantity && one.moved === other.moved;
}
