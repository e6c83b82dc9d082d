/**
 * Across jobs: readings that repeat from one unit to the next, or sit exactly on the sheet's target. Told to the
 * owner, with what is the same; a burner held to its target by an adaptive control does come close, so it is a question.
 */

export type JobReadings = {
  readonly jobId: string;
  /** Own units, by quantity and point: `co2DryVolPct@high`. */
  readonly values: Readonly<Record<string, number>>;
};

export type CopyProblem =
  | {
      readonly code: 'copied-readings';
      readonly how: 'same-as-another-job';
      readonly jobIds: readonly string[];
      readonly same: number;
    }
  | {
      readonly code: 'copied-readings';
      readonly how: 'no-spread';
      readonly jobIds: readonly string[];
      readonly key: string;
    }
  | {
      readonly code: 'copied-readings';
      readonly how: 'exactly-on-target';
      readonly jobIds: readonly string[];
      readonly same: number;
    };

/** Fewer shared quantities than these can be alike by chance. */
const LEAST_COMPARED = 4;
/** As many units in a row with not a digit's difference do not happen. */
const LEAST_JOBS_WITHOUT_SPREAD = 4;

/** Targets by the same keys, where the sheet names them. */
export function copiedReadings(
  jobs: readonly JobReadings[],
  targets: Readonly<Record<string, number>> = {},
): readonly CopyProblem[] {
  return [...samePairs(jobs), ...withoutSpread(jobs), ...onTarget(jobs, targets)];
}

function samePairs(jobs: readonly JobReadings[]): readonly CopyProblem[] {
  return jobs.flatMap((job, index) =>
    jobs.slice(index + 1).flatMap((other) => {
      const shared = Object.keys(job.values).filter((key) => Object.hasOwn(other.values, key));
      if (shared.length < LEAST_COMPARED || !shared.every((key) => job.values[key] === other.values[key])) return [];
      const jobIds = [job.jobId, other.jobId];
      return [{ code: 'copied-readings' as const, how: 'same-as-another-job' as const, jobIds, same: shared.length }];
    }),
  );
}

function withoutSpread(jobs: readonly JobReadings[]): readonly CopyProblem[] {
  const keys = new Set(jobs.flatMap(({ values }) => Object.keys(values)));
  return [...keys].sort().flatMap((key) => {
    const holding = jobs.filter(({ values }) => Object.hasOwn(values, key));
    const different = new Set(holding.map(({ values }) => values[key]));
    if (holding.length < LEAST_JOBS_WITHOUT_SPREAD || different.size > 1) return [];
    return [
      { code: 'copied-readings' as const, how: 'no-spread' as const, jobIds: holding.map(({ jobId }) => jobId), key },
    ];
  });
}

function onTarget(jobs: readonly JobReadings[], targets: Readonly<Record<string, number>>): readonly CopyProblem[] {
  return jobs.flatMap(({ jobId, values }) => {
    const compared = Object.keys(targets).filter((key) => Object.hasOwn(values, key));
    if (compared.length < 2 || !compared.every((key) => values[key] === targets[key])) return [];
    return [
      { code: 'copied-readings' as const, how: 'exactly-on-target' as const, jobIds: [jobId], same: compared.length },
    ];
  });
}
