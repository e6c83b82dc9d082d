/** What does not fit, in words a dispatcher can act on. */
import { readinessLabel } from '../../domain/procedure/readiness.ts';
import { assertNever } from '../../domain/result.ts';
import type { Conflict } from '../../domain/schedule/dayConflicts.ts';
import type { Obstacle } from '../../domain/schedule/obstacles.ts';
import { durationWords } from '../form/readTime.ts';
import { INSTRUMENT_SHORT } from '../instruments/instrumentWords.ts';
import { agedWords } from '../jobs/agedWords.ts';
import { clockWords, dayWords } from '../kit/dayWords.ts';
import { LICENCE } from '../kit/errorWords.ts';
import { sitePlaceWords } from '../kit/places.ts';

/** `nameOf`: how another visit is called. */
export function conflictWords(conflict: Conflict, nameOf: (visitId: string) => string): string {
  switch (conflict.code) {
    case 'obstacle':
      return obstacleWords(conflict.obstacle);
    case 'overlap':
      return `at the same time as ${nameOf(conflict.otherVisitId)}`;
    case 'travel-too-short':
      return `${durationWords(conflict.haveMin)} between, but the way from ${nameOf(conflict.fromVisitId)} takes about ${durationWords(conflict.needMin)}`;
    case 'sets-out-early':
      return `to be there, the day has to begin at ${clockWords(Math.max(0, conflict.leaveMin))} instead of ${clockWords(conflict.hoursFromMin)}`;
    case 'home-late':
      return `home at about ${clockWords(conflict.homeMin)}, hours end at ${clockWords(conflict.hoursToMin)}`;
    case 'outside-promise':
      return `outside the promised arrival ${windowWords(conflict.promisedFromMin, conflict.promisedToMin)}`;
    case 'day-not-promised':
      return `the customer was told ${dayWords(conflict.promisedOn, { weekday: true })}`;
    case 'after-latest':
      return `after the latest day, ${dayWords(conflict.latestOn)}${conflict.why === null ? '' : `: ${conflict.why}`}`;
    case 'outside-wanted':
      return `outside the days that suit the customer (${daysWords(conflict.wantedFromOn, conflict.wantedToOn)})`;
    case 'readiness-open':
      return `planned, but the site is not ready: ${conflict.items.map(readinessLabel).join('; ')}`;
    case 'work-done':
      return 'its work is finished already: cancel the visit';
    case 'readiness-old':
      return `ask again: ${agedWords(conflict.answers)}`;
    default:
      return assertNever(conflict);
  }
}

export function obstacleWords(obstacle: Obstacle): string {
  switch (obstacle.code) {
    case 'not-here':
      return 'does not work here on that day';
    case 'licence':
      return LICENCE[obstacle.why];
    case 'rating-unknown':
      return 'licence has an upper limit, and the rated input on the plate is not known: ask for it';
    case 'licence-elsewhere':
      return `licence is for ${obstacle.places.join(' and ')}, the site is in ${sitePlaceWords(obstacle)}: does it count there?`;
    case 'no-skill':
      return `lacks what the job asks for: ${obstacle.skill}`;
    case 'absent':
      return `away: ${obstacle.reason}`;
    case 'does-not-work':
      return 'has no working hours that day';
    case 'outside-hours':
      return `does not fit into the hours ${clockWords(obstacle.fromMin)}–${clockWords(obstacle.toMin)}`;
    case 'no-training':
      return `no training on file for ${obstacle.maker} ${obstacle.model}${demandedWords(obstacle)}`;
    case 'no-instrument':
      return `no ${INSTRUMENT_SHORT[obstacle.kind]} in date on that day${demandedWords(obstacle)}`;
    default:
      return assertNever(obstacle);
  }
}

function demandedWords({ isDemanded }: { readonly isDemanded: boolean }): string {
  return isDemanded ? ', which the maker’s sheet demands' : '';
}

export function windowWords(fromMin: number | null, toMin: number | null): string {
  if (fromMin === null) return toMin === null ? 'any time' : `until ${clockWords(toMin)}`;
  return toMin === null ? `from ${clockWords(fromMin)}` : `${clockWords(fromMin)}–${clockWords(toMin)}`;
}

function daysWords(from: string | null, to: string | null): string {
  if (from === null) return to === null ? 'any' : `until ${dayWords(to)}`;
  return to === null ? `from ${dayWords(from)}` : `${dayWords(from)} to ${dayWords(to)}`;
}
