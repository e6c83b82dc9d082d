/** Why somebody may not, or had better not, be sent to a job: as of the visit's day, never today. */
import type { FuelKey } from '../procedure/modelSheet.ts';
import type { InstrumentKind } from '../vocabulary/people.ts';
import {
  findLicenceProblem,
  type HeldLicence,
  keepsFromWork,
  type LicenceProblem,
  licencePlacesElsewhere,
} from './gasLicence.ts';
import { type HeldInstrument, hasInDate } from './heldInstruments.ts';
import { type HeldTraining, isTrained } from './makerTraining.ts';
import type { WorkDemands } from './workDemands.ts';
import { type Absence, absencesOn, hoursOn, type WorkingHours, workSpans } from './workSpans.ts';

export type Worker = {
  readonly activeFrom: string;
  readonly activeTo: string | null;
  readonly licences: readonly HeldLicence[];
  readonly trainings: readonly HeldTraining[];
  readonly skills: readonly string[];
  readonly hours: readonly WorkingHours[];
  readonly absences: readonly Absence[];
  /** What they can take along, their own and what nobody keeps. */
  readonly instruments: readonly HeldInstrument[];
};

export type Work = WorkDemands & {
  readonly kind: 'startup' | 'service' | 'repair' | 'follow-up';
  readonly fuel: FuelKey | null;
  readonly ratedInputKw: number | null;
  /** State or province of the site as the office wrote it, and its country by code; null or left out: not known. */
  readonly region?: string | null;
  readonly country?: string | null;
  readonly maker: string;
  readonly model: string;
  readonly skills: readonly string[];
};

/** `fromMin` null: some time that day. */
export type When = { readonly on: string; readonly fromMin: number | null; readonly durationMin: number };

export type Obstacle =
  | { readonly code: 'not-here' }
  | { readonly code: 'licence'; readonly why: Exclude<LicenceProblem, 'rating-unknown'> }
  /** The licence has an upper limit and the rating is not on file: the burner waits until the plate was read. */
  | { readonly code: 'rating-unknown' }
  /** The places the licences name are not the site's: somebody has to know whether they count there. */
  | {
      readonly code: 'licence-elsewhere';
      readonly places: readonly string[];
      /** The site's; one of the two is known. */
      readonly region: string | null;
      readonly country: string | null;
    }
  | { readonly code: 'no-skill'; readonly skill: string }
  | { readonly code: 'absent'; readonly reason: string }
  | { readonly code: 'does-not-work' }
  | { readonly code: 'outside-hours'; readonly fromMin: number; readonly toMin: number }
  /** `isDemanded`: the maker's sheet insists on it. */
  | { readonly code: 'no-training'; readonly maker: string; readonly model: string; readonly isDemanded: boolean }
  /** None of the kind in calibration on that day. */
  | { readonly code: 'no-instrument'; readonly kind: InstrumentKind; readonly isDemanded: boolean };

/** These keep somebody from the work; the others are for the dispatcher to weigh. */
const FORBIDDING: readonly Obstacle['code'][] = ['not-here', 'licence', 'no-skill', 'absent'];

export function isForbidding(obstacle: Obstacle): boolean {
  return FORBIDDING.includes(obstacle.code) || ('isDemanded' in obstacle && obstacle.isDemanded);
}

/** What forbids comes first. */
export function findObstacles(worker: Worker, works: readonly Work[], when: When): readonly Obstacle[] {
  const found = [
    ...(isEmployed(worker, when.on) ? [] : [{ code: 'not-here' } as const]),
    ...timeObstacles(worker, when),
    ...qualificationObstacles(worker, works, when.on),
  ];
  return found.toSorted((a, b) => Number(isForbidding(b)) - Number(isForbidding(a)));
}

/** Licence, skills, training and instruments: what holds whatever the hour. The planner's `qualifications.ts` says the same. */
export function qualificationObstacles(worker: Worker, works: readonly Work[], on: string): readonly Obstacle[] {
  const found: Obstacle[] = [];
  for (const work of works) {
    const why = findLicenceProblem(worker.licences, { on, fuel: work.fuel, ratedInputKw: work.ratedInputKw });
    if (keepsFromWork(why)) found.push({ code: 'licence', why });
    if (why === 'rating-unknown') found.push({ code: why });
    const [region, country] = [work.region ?? null, work.country ?? null];
    const places = licencePlacesElsewhere(worker.licences, { ...work, on, region, country });
    if (places.length > 0) found.push({ code: 'licence-elsewhere', places, region, country });
    for (const skill of work.skills) if (!worker.skills.includes(skill)) found.push({ code: 'no-skill', skill });
    // Common practice: a maker's course is asked of whoever lights its boiler for the first time.
    if (work.kind === 'startup' && !isTrained(worker.trainings, work, on))
      found.push({ code: 'no-training', maker: work.maker, model: work.model, isDemanded: work.insistsOnTraining });
    for (const kind of work.instruments)
      if (!hasInDate(worker.instruments, kind, on))
        found.push({ code: 'no-instrument', kind, isDemanded: work.insistsOnInstruments });
  }
  return withoutRepeats(found);
}

/** Said once of a visit with several jobs: what is demanded before what is wished for, and of two courses one. */
function withoutRepeats(found: readonly Obstacle[]): readonly Obstacle[] {
  const keyOf = (one: Obstacle): string =>
    one.code === 'no-skill'
      ? `${one.code} ${one.skill}`
      : one.code === 'no-instrument'
        ? `${one.code} ${one.kind}`
        : one.code;
  const demandedFirst = found.toSorted((a, b) => Number(isForbidding(b)) - Number(isForbidding(a)));
  const kept = new Map<string, Obstacle>();
  for (const one of demandedFirst) if (!kept.has(keyOf(one))) kept.set(keyOf(one), one);
  return found.filter((one) => kept.get(keyOf(one)) === one);
}

function timeObstacles(worker: Worker, { on, fromMin, durationMin }: When): readonly Obstacle[] {
  const away = absencesOn(worker.absences, on);
  const toMin = (fromMin ?? 0) + durationMin;
  const clashing = away.find(
    (one) =>
      one.fromMin === null || one.toMin === null || (fromMin !== null && one.fromMin < toMin && fromMin < one.toMin),
  );
  if (clashing !== undefined) return [{ code: 'absent', reason: clashing.reason }];
  const hours = hoursOn(worker.hours, on);
  if (hours === undefined) return [{ code: 'does-not-work' }];
  if (fromMin === null) {
    const free = workSpans(worker.hours, worker.absences, on).reduce((sum, span) => sum + span.toMin - span.fromMin, 0);
    return durationMin <= free ? [] : [{ code: 'outside-hours', fromMin: hours.fromMin, toMin: hours.toMin }];
  }
  // A break is taken when the work allows; only the ends of the day are held against a visit.
  return hours.fromMin <= fromMin && toMin <= hours.toMin
    ? []
    : [{ code: 'outside-hours', fromMin: hours.fromMin, toMin: hours.toMin }];
}

function isEmployed({ activeFrom, activeTo }: Worker, on: string): boolean {
  return activeFrom <= on && (activeTo === null || on <= activeTo);
}
