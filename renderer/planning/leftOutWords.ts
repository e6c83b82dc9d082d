/** Why a job or visit finds no place in a plan, in words a dispatcher can act on. */
import { readinessLabel } from '../../domain/procedure/readiness.ts';
import { assertNever } from '../../domain/result.ts';
import type { DayObstacle } from '../../domain/schedule/unplannedReason.ts';
import type { LeftOutReason } from '../../electron/contract/planning.ts';
import { dayWords } from '../kit/dayWords.ts';

export function leftOutWords(reason: LeftOutReason): string {
  switch (reason.code) {
    case 'not-ready':
      return `the site is not ready: ${reason.items.map(readinessLabel).join('; ')}`;
    case 'pin-unknown':
      return reason.field === 'technician'
        ? 'pinned to somebody who has no working day in these days'
        : 'pinned to a day that is not one of these';
    case 'no-days-in-a-row':
      return 'longer than a day, and nobody who may do it has the days in a row free for it: plan more days, or make room on the board';
    case 'nobody-can':
      return nobodyWords(reason.isPinned, reason.obstacles);
    case 'earlier-visit-not-planned':
      return 'the visit that has to come before it has no place';
    case 'no-gap':
      return `no gap left on ${reason.candidateDays === 1 ? 'the one day that would do' : `any of the ${reason.candidateDays} days that would do`}`;
    case 'pin-clash':
      return 'pinned to a time that another pinned visit holds: one of the pins must give way';
    case 'fixed-does-not-fit':
      return 'begun or done, and it does not fit the hours of that day';
    default:
      return assertNever(reason);
  }
}

/** Counted are one person's days each: of three people on five days there are fifteen. */
function nobodyWords(
  isPinned: boolean,
  obstacles: readonly { readonly obstacle: DayObstacle; readonly days: number }[],
): string {
  const all = obstacles.reduce((sum, { days }) => sum + days, 0);
  const share = (days: number) => (days === all ? '' : ` (${days} of ${all} working days, each person’s counted)`);
  return `${isPinned ? 'as it is booked or pinned, nobody can' : 'nobody can'}: ${obstacles
    .map(({ obstacle, days }) => `${dayObstacleWords(obstacle, isPinned)}${share(days)}`)
    .join('; ')}`;
}

function dayObstacleWords(obstacle: DayObstacle, isPinned: boolean): string {
  switch (obstacle.code) {
    case 'absent':
      return 'away or no working hours';
    case 'skill-missing':
      return `lacks ${skillName(obstacle.skill)}`;
    case 'skill-not-valid':
      return obstacle.validTo === null
        ? `${skillName(obstacle.skill)} not valid that day`
        : `${skillName(obstacle.skill)} ends on ${dayWords(obstacle.validTo)}`;
    case 'no-window-that-day':
      return 'not a day that was promised or suits';
    case 'window-outside-hours':
      return `${isPinned ? 'at that time ' : ''}the work and the ways there and back do not fit into the working hours`;
    case 'pinned-start-outside-windows':
      return 'the pinned start lies outside the promised hours';
    default:
      return assertNever(obstacle);
  }
}

/** The planner knows a licence by fuel and size, anything else by its name. */
function skillName(code: string): string {
  const [kind = '', ...rest] = code.split(' ');
  const name = rest.join(' ');
  switch (kind) {
    case 'skill':
      return name;
    case 'training':
      return `the training on ${name} that the maker’s sheet demands`;
    case 'instrument':
      return `a ${name.replaceAll('-', ' ')} in calibration, which the maker’s sheet demands`;
    default:
      return 'a licence for this gas work';
  }
}
