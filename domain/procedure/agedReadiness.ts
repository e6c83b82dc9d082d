/**
 * Readiness grows old: what was so three weeks before the visit has to be asked again. How long each answer holds is common
 * practice, no source; what is not listed holds as long as the job is open (a plate, a meter's size, a permit's number), or is
 * judged by the program itself on the day (who goes).
 */
import { daysBetween } from '../schedule/dayMinutes.ts';
import { READINESS_ITEMS } from './readiness.ts';

/** Switched, shut or taken off by any trade on a building site from one day to the next. */
const SWITCHED_IN_A_MOMENT_DAYS = 7;
/** People move, a supply is shut for other work, a system is drained once more, a tank is drawn from. */
const CHANGES_IN_A_FORTNIGHT_DAYS = 14;
/** Built once; only more building takes it down again. */
const BUILT_DAYS = 28;

const HOLDS_DAYS: Readonly<Record<string, number>> = {
  power: SWITCHED_IN_A_MOMENT_DAYS,
  'heat-load': SWITCHED_IN_A_MOMENT_DAYS,
  access: CHANGES_IN_A_FORTNIGHT_DAYS,
  'gas-live': CHANGES_IN_A_FORTNIGHT_DAYS,
  'fuel-on-site': CHANGES_IN_A_FORTNIGHT_DAYS,
  water: CHANGES_IN_A_FORTNIGHT_DAYS,
  vent: BUILT_DAYS,
  condensate: BUILT_DAYS,
  controls: BUILT_DAYS,
};

/** Customers are called up to three days ahead (common practice, no source): answers of then are as fresh as can be had. */
export const CALL_DAYS = 3;

export type GivenAnswer = {
  readonly itemKey: string;
  readonly answer: 'yes' | 'no' | 'unknown' | 'not-applicable';
  /** The day on which somebody said so. */
  readonly askedOn: string;
};

export type AgedAnswer = { readonly itemKey: string; readonly askedDaysAgo: number };

/** In the order of the list: what was given and is too old on that day. What is still open is asked anyway; "not needed" needs no asking again. */
export function agedAnswers(given: readonly GivenAnswer[], on: string): readonly AgedAnswer[] {
  const inOrder = READINESS_ITEMS.flatMap(({ key }) => given.filter(({ itemKey }) => itemKey === key));
  return inOrder.flatMap(({ itemKey, answer, askedOn }) => {
    const askedDaysAgo = daysBetween(askedOn, on);
    const holds = HOLDS_DAYS[itemKey];
    return answer === 'yes' && holds !== undefined && askedDaysAgo > holds ? [{ itemKey, askedDaysAgo }] : [];
  });
}

/** A visit that is still too far off to call about is judged as of today: asking now would not help on the day. */
export function readinessJudgedOn(today: string, plannedOn: string | null): string {
  if (plannedOn === null || plannedOn < today) return today;
  return daysBetween(today, plannedOn) <= CALL_DAYS ? plannedOn : today;
}
