/**
 * Which services were due, which of them were done, and which comes next: the same whatever day it is.
 *
 * Anniversary: the nth due day is anchor + n × months; a service belongs to the due day it lies nearest to, so a late one
 * never counts for the year after. On the midpoint it belongs to the earlier one, the cautious side.
 * Last service: due day and latest day are counted from the service before, the first from the anchor.
 * The latest day is counted from the same start as the due day, months and grace together: 31 Jan + 1 month + 1 month of
 * grace is 31 Mar, not 28 Mar.
 */
import type { CountedFrom, Derivation } from '../coverage/derivation.ts';
import { derive } from '../coverage/derivation.ts';
import { addDays, addMonths, laterOf } from '../coverage/period.ts';
import type { ServiceAnchor, ServiceRule } from './serviceRule.ts';

export type ServicePeriod = {
  /** Counted from 1. */
  readonly nth: number;
  readonly countedFrom: CountedFrom;
  readonly fromOn: string;
  readonly months: number;
  readonly graceMonths: number;
  readonly dueOn: string;
  readonly latestOn: string;
  readonly doneOn: string | null;
};

export type ServiceSchedule = {
  /** Up to the last one that was done; those never done have no day. */
  readonly past: readonly ServicePeriod[];
  readonly next: ServicePeriod;
};

/** How long before the due day a service may be offered (common practice, no source). */
export const OFFERED_DAYS_BEFORE = 60;

export function serviceSchedule(
  rule: ServiceRule,
  anchor: ServiceAnchor,
  servicesOn: readonly string[],
): ServiceSchedule {
  const services = servicesOn.filter((on) => on > anchor.on).sort();
  return rule.countedFrom === 'anniversary'
    ? fromAnniversary(rule, anchor, services)
    : fromLastService(rule, anchor, services);
}

/** Every period whose latest day is over by `today`, done or not. */
export function periodsOver(
  rule: ServiceRule,
  anchor: ServiceAnchor,
  schedule: ServiceSchedule,
  today: string,
): readonly ServicePeriod[] {
  const periods = [...schedule.past];
  let period = schedule.next;
  while (period.latestOn < today) {
    periods.push(period);
    // Without a service there is no new start to count from: one missed period stays one.
    if (rule.countedFrom === 'last-service') break;
    period = periodOf(rule, anchor.countedFrom, anchor.on, period.nth + 1, (period.nth + 1) * rule.everyMonths, null);
  }
  return periods;
}

/** From when a service counts for the period and is worth offering. */
export function windowFromOf(rule: ServiceRule, period: ServicePeriod): string {
  const offered = addDays(period.dueOn, -OFFERED_DAYS_BEFORE);
  if (rule.earlyServiceCounts) return offered;
  return laterOf(earliestOn(rule, period), offered);
}

export function dueDerivation(period: ServicePeriod, anchor: ServiceAnchor): Derivation {
  return derivationOf(period, anchor, 0);
}

export function latestDerivation(period: ServicePeriod, anchor: ServiceAnchor): Derivation {
  return derivationOf(period, anchor, period.graceMonths);
}

function derivationOf(period: ServicePeriod, anchor: ServiceAnchor, graceMonths: number): Derivation {
  const isFromAnchor = period.fromOn === anchor.on && period.countedFrom === anchor.countedFrom;
  return derive({
    countedFrom: period.countedFrom,
    fromOn: period.fromOn,
    precision: isFromAnchor ? anchor.precision : 'day',
    period: { months: period.months + graceMonths },
    graceMonths,
    assumed: isFromAnchor && anchor.isAssumed ? 'named-date-unknown' : null,
  });
}

function fromAnniversary(rule: ServiceRule, anchor: ServiceAnchor, services: readonly string[]): ServiceSchedule {
  const doneOn = new Map<number, string>();
  let last = 0;
  for (const on of services) {
    const nth = nearestNth(rule, anchor.on, on);
    if (nth === 0 || doneOn.has(nth)) continue;
    const period = anniversary(rule, anchor, nth, on);
    if (!rule.earlyServiceCounts && on < earliestOn(rule, period)) continue;
    doneOn.set(nth, on);
    last = Math.max(last, nth);
  }
  const past = Array.from({ length: last }, (_, index) =>
    anniversary(rule, anchor, index + 1, doneOn.get(index + 1) ?? null),
  );
  return { past, next: anniversary(rule, anchor, last + 1, null) };
}

function fromLastService(rule: ServiceRule, anchor: ServiceAnchor, services: readonly string[]): ServiceSchedule {
  const past: ServicePeriod[] = [];
  let countedFrom = anchor.countedFrom;
  let fromOn = anchor.on;
  for (const on of services) {
    const period = periodOf(rule, countedFrom, fromOn, past.length + 1, rule.everyMonths, on);
    if (!rule.earlyServiceCounts && on < earliestOn(rule, period)) continue;
    past.push(period);
    countedFrom = 'last-service';
    fromOn = on;
  }
  return { past, next: periodOf(rule, countedFrom, fromOn, past.length + 1, rule.everyMonths, null) };
}

function anniversary(rule: ServiceRule, anchor: ServiceAnchor, nth: number, doneOn: string | null): ServicePeriod {
  return periodOf(rule, anchor.countedFrom, anchor.on, nth, nth * rule.everyMonths, doneOn);
}

function periodOf(
  rule: ServiceRule,
  countedFrom: CountedFrom,
  fromOn: string,
  nth: number,
  months: number,
  doneOn: string | null,
): ServicePeriod {
  return {
    nth,
    countedFrom,
    fromOn,
    months,
    graceMonths: rule.graceMonths,
    dueOn: addMonths(fromOn, months),
    latestOn: addMonths(fromOn, months + rule.graceMonths),
    doneOn,
  };
}

function earliestOn(rule: ServiceRule, period: ServicePeriod): string {
  return addMonths(period.fromOn, period.months - rule.graceMonths);
}

/** 0: nearest to the anchor itself, a visit in the first months that is nobody's yearly service. */
function nearestNth(rule: ServiceRule, anchorOn: string, on: string): number {
  const monthsBetween = 12 * (yearOf(on) - yearOf(anchorOn)) + (monthOf(on) - monthOf(anchorOn));
  let nth = Math.max(0, Math.floor(monthsBetween / rule.everyMonths) - 1);
  while (on > midpointAfter(rule, anchorOn, nth)) nth += 1;
  return nth;
}

/** An odd number of months has its half month counted as 15 days. */
function midpointAfter(rule: ServiceRule, anchorOn: string, nth: number): string {
  const half = addMonths(anchorOn, nth * rule.everyMonths + Math.floor(rule.everyMonths / 2));
  return rule.everyMonths % 2 === 0 ? half : addDays(half, 15);
}

function yearOf(day: string): number {
  return Number(day.slice(0, 4));
}

function monthOf(day: string): number {
  return Number(day.slice(5, 7));
}
