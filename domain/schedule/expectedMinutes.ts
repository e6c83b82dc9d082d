/**
 * How long the work on site takes before anybody has said otherwise: by kind of job, size and number of boilers, and
 * whether the system is still to be filled. Common practice, no source: a wall-hung boiler two to three and a half hours, with
 * filling four to six; a floor-standing one, or each of a cascade, a day and half a day more; an annual service two hours at most.
 */

export type JobForLength = {
  readonly kind: 'startup' | 'service' | 'repair' | 'follow-up';
  readonly ratedInputKw: number | null;
  /** Filled, tested and flushed; null: not asked. */
  readonly isSystemFilled: boolean | null;
  /** What somebody who knows the place wrote down; wins over all of this. */
  readonly expectedMin: number | null;
};

const WALL_HUNG_STARTUP_MIN = 180;
const FILLING_MIN = 120;
const WORKING_DAY_MIN = 480;
const CASCADE_EXTRA_MIN = 240;
const OTHER_MIN = { service: 105, repair: 120, 'follow-up': 60 } as const;
/** Coming back to the same plant room: travel, protection and papers are already done. */
const SECOND_JOB_MIN = { service: 60, repair: 60, 'follow-up': 30 } as const;
/** Above this an appliance stands on the floor; wall-hung ones end about here. */
export const FLOOR_STANDING_FROM_KW = 70;

export function expectedMinutes(jobs: readonly JobForLength[]): number {
  const startups = jobs.filter((job) => job.kind === 'startup');
  const isCascade = startups.length > 1;
  const minutes = jobs.map((job, index) => {
    if (job.expectedMin !== null) return job.expectedMin;
    if (job.kind !== 'startup') return index === 0 ? OTHER_MIN[job.kind] : SECOND_JOB_MIN[job.kind];
    const isLarge = isCascade || (job.ratedInputKw !== null && job.ratedInputKw > FLOOR_STANDING_FROM_KW);
    const filling = job.isSystemFilled === false && job === startups[0] ? FILLING_MIN : 0;
    return (isLarge ? WORKING_DAY_MIN : WALL_HUNG_STARTUP_MIN) + filling;
  });
  const isWrittenDown = startups.some((job) => job.expectedMin !== null);
  return minutes.reduce((sum, each) => sum + each, 0) + (isCascade && !isWrittenDown ? CASCADE_EXTRA_MIN : 0);
}
