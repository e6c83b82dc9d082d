/**
 * One picture put in for several things, or for several boilers: the same bytes, told by their hash. A question to ask: one
 * photo may honestly show two things at once, and a meter that two boilers share.
 */
import type { RunRecord } from '../../procedure/runRecord.ts';

export type SamePhotoProblem = {
  readonly code: 'same-photo';
  /** Pictures that were used more than once. */
  readonly photos: number;
  /** What they stand for, taken together: items of runs. */
  readonly places: number;
};

type Photographed = { readonly runId: string; readonly record: Pick<RunRecord, 'photos'> };

/** One answer for every set of runs that share pictures, so that a copied batch is one thing to look at. */
export function samePhotos(
  runs: readonly Photographed[],
): readonly { readonly runIds: readonly string[]; readonly problem: SamePhotoProblem }[] {
  const uses = runs.flatMap(({ runId, record }) =>
    record.photos.map(({ sha256, itemKey }) => ({ sha256, runId, place: `${runId} ${itemKey}` })),
  );
  const repeated = [...Map.groupBy(uses, ({ sha256 }) => sha256).values()]
    .map((same) => ({
      runIds: [...new Set(same.map(({ runId }) => runId))],
      places: new Set(same.map(({ place }) => place)),
    }))
    .filter(({ places }) => places.size > 1);
  return [...Map.groupBy(repeated, ({ runIds }) => runIds.toSorted().join(' ')).values()].flatMap((group) => {
    const [first] = group;
    const places = new Set(group.flatMap((one) => [...one.places])).size;
    return first === undefined
      ? []
      : [{ runIds: first.runIds, problem: { code: 'same-photo', photos: group.length, places } }];
  });
}
