/**
 * Records that the owner had better look at: one technician's readings that repeat from unit to unit or sit exactly on the
 * sheet's middle, visits shorter than their own waits, times out of order, photos from another day, missing, or used twice. Questions,
 * not judgements: nothing of it stands on anybody's record.
 */
import type { ModelSheet } from '../../procedure/modelSheet.ts';
import type { RunRecord } from '../../procedure/runRecord.ts';
import { type CopyProblem, copiedReadings, type JobReadings } from '../mistakes/copiedReadings.ts';
import { FLUE_GAS } from '../quantityGroups.ts';
import { type SamePhotoProblem, samePhotos } from './samePhotos.ts';
import { type VisitTimesProblem, visitTimesProblems } from './visitTimes.ts';

export type AuditedRun = {
  readonly runId: string;
  readonly record: RunRecord;
  readonly sheet: Pick<ModelSheet, 'startup' | 'service' | 'limits'>;
  /** The visit is over: what is missing now stays missing. */
  readonly isOver: boolean;
};

export type OddRecord = {
  /** Who measured; null: nobody is named, or several are. */
  readonly staffId: string | null;
  readonly runIds: readonly string[];
  readonly problem:
    | { readonly code: 'alike'; readonly same: number }
    | { readonly code: 'no-spread'; readonly key: string; readonly value: number }
    | { readonly code: 'on-target'; readonly same: number }
    | { readonly code: 'photos-missing'; readonly count: number }
    | SamePhotoProblem
    | VisitTimesProblem;
};

export function oddRecords(runs: readonly AuditedRun[]): readonly OddRecord[] {
  const byPerson = Map.groupBy(runs, ({ record }) => whoMeasured(record));
  const people = new Map(runs.map(({ runId, record }) => [runId, whoMeasured(record)]));
  const pictures = samePhotos(runs).map((odd) => {
    const [who, another] = new Set(odd.runIds.map((runId) => people.get(runId) ?? null));
    return { staffId: another === undefined ? (who ?? null) : null, ...odd };
  });
  const ofPeople = [...byPerson].flatMap(([staffId, own]) => [
    ...copied(own).map((odd) => ({ staffId, ...odd })),
    ...own.flatMap((run) =>
      [...visitTimesProblems(run.record), ...missingPhotos(run)].map((problem) => ({
        staffId,
        runIds: [run.runId],
        problem,
      })),
    ),
  ]);
  return [...ofPeople, ...pictures];
}

/** Of several people the one who read most of the numbers. */
function whoMeasured({ readings }: RunRecord): string | null {
  const counts = [...Map.groupBy(readings, ({ measuredById }) => measuredById)].toSorted(
    ([, one], [, other]) => other.length - one.length,
  );
  return counts[0]?.[0] ?? null;
}

type Odd = Pick<OddRecord, 'runIds' | 'problem'>;

function copied(runs: readonly AuditedRun[]): readonly Odd[] {
  const jobs = runs.map((run) => ({ jobId: run.runId, values: flueValues(run.record) }));
  const across = copiedReadings(jobs);
  const pairs = across.filter((one) => one.how === 'same-as-another-job');
  return [
    ...alikeGroups(pairs),
    ...across.flatMap((one) => {
      if (one.how !== 'no-spread') return [];
      const value = jobs.find(({ jobId }) => jobId === one.jobIds[0])?.values[one.key];
      return value === undefined
        ? []
        : [{ runIds: one.jobIds, problem: { code: 'no-spread' as const, key: one.key, value } }];
    }),
    // Each against the sheet it was read by.
    ...runs.flatMap((run, index) =>
      copiedReadings(jobs.slice(index, index + 1), middlesOf(run.sheet)).flatMap((one) =>
        one.how === 'exactly-on-target'
          ? [{ runIds: one.jobIds, problem: { code: 'on-target' as const, same: one.same } }]
          : [],
      ),
    ),
  ];
}

/** Twelve units that are all alike are one thing to look at, not sixty-six. */
function alikeGroups(pairs: readonly Extract<CopyProblem, { how: 'same-as-another-job' }>[]): readonly Odd[] {
  const groups: { runIds: Set<string>; same: number }[] = [];
  for (const { jobIds, same } of pairs) {
    const group = groups.find(({ runIds }) => jobIds.some((jobId) => runIds.has(jobId)));
    if (group === undefined) groups.push({ runIds: new Set(jobIds), same });
    else for (const jobId of jobIds) group.runIds.add(jobId);
  }
  return groups.map(({ runIds, same }) => ({ runIds: [...runIds], problem: { code: 'alike', same } }));
}

/** The last sample of each at each firing point. */
function flueValues({ readings }: RunRecord): JobReadings['values'] {
  const live = readings.filter(
    (one) =>
      one.supersededById === null && one.valueOwn !== null && one.comparator === '=' && FLUE_GAS.has(one.quantity),
  );
  return Object.fromEntries(
    live
      .toSorted((one, other) => one.sample - other.sample)
      .flatMap((one) => (one.valueOwn === null ? [] : [[`${one.quantity}@${one.point}`, one.valueOwn] as const])),
  );
}

/** The middle of every band with two ends: what somebody who makes numbers up would write. */
function middlesOf({ limits }: Pick<ModelSheet, 'limits'>): JobReadings['values'] {
  return Object.fromEntries(
    limits.flatMap(({ quantity, point, min, max }) =>
      min === undefined || max === undefined || !FLUE_GAS.has(quantity)
        ? []
        : [[`${quantity}@${point}`, Number(((min + max) / 2).toFixed(3))] as const],
    ),
  );
}

function missingPhotos({ record, sheet, isOver }: AuditedRun): readonly OddRecord['problem'][] {
  if (!isOver) return [];
  const steps = record.kind === 'startup' ? sheet.startup : sheet.service;
  const wanted = steps
    .flatMap((step) => step.items)
    .filter((item) => item.kind === 'photo' && item.onlyFor === undefined && item.blocks.includes('registration'));
  const count = wanted.filter((item) => !record.photos.some(({ itemKey }) => itemKey === item.key)).length;
  return count === 0 ? [] : [{ code: 'photos-missing', count }];
}
