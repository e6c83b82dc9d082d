/**
 * What asks for the next service of one appliance: the maker's terms (or the general rule), and each agreement with its own
 * interval. The one that binds comes first; the others stay beside it with their reasons.
 *
 * Rule     An agreement is counted from its start, every interval anew from there, without grace; what falls due after its
 *          end is not owed. What fell due before stays until it is done, or until the end is set before it.
 *          The earliest latest day binds: an agreement never lengthens what the maker's terms demand. The general rule is
 *          nobody's demand and steps back behind an agreement from the day that begins; what fell due by it before that
 *          day is still owed.
 *          Common practice, no source; counting of months: period.ts.
 */
import type { KnownDate } from '../coverage/knownDate.ts';
import { earlierOf } from '../coverage/period.ts';
import type { ServiceAgreement } from './serviceAgreement.ts';
import { type ServiceAnchor, type ServiceRule, type Sureness, serviceAnchorOf, surenessOf } from './serviceRule.ts';
import { type ServicePeriod, serviceSchedule, windowFromOf } from './serviceSchedule.ts';

export type ServiceDemand = {
  readonly rule: ServiceRule;
  readonly anchor: ServiceAnchor;
  readonly period: ServicePeriod;
  readonly sureness: Sureness;
  /** null: the maker's terms or the general rule. */
  readonly agreement: ServiceAgreement | null;
  /** false: shown, but an agreement stands instead of it. */
  readonly isOwed: boolean;
};

export type ServiceFacts = {
  readonly serviceRule: ServiceRule;
  readonly dates: readonly KnownDate[];
  readonly servicesOn: readonly string[];
  readonly agreements: readonly ServiceAgreement[];
};

export type NextService = {
  /** The earliest day anybody asks it for. */
  readonly dueOn: string;
  /** The earliest latest day: never planned past it. */
  readonly latestOn: string;
  readonly windowFrom: string;
  /** Of the demand that binds. */
  readonly sureness: Sureness;
  /** The one that binds first. */
  readonly demands: readonly ServiceDemand[];
};

/** null: no date is known that services could be counted from, and nobody agreed on anything. */
export function nextService(facts: ServiceFacts): NextService | null {
  const own = ownDemand(facts);
  const agreed = facts.agreements.flatMap((agreement) => agreedDemand(agreement, facts.servicesOn));
  if (agreed.length === 0) return own === null ? null : bound([own], []);
  if (own === null) return bound(agreed, []);
  return isReplaced(own, agreed) ? bound(agreed, [{ ...own, isOwed: false }]) : bound([own, ...agreed], []);
}

/** The general rule, where an agreement had begun by the day it is due. */
function isReplaced(own: ServiceDemand, agreed: readonly ServiceDemand[]): boolean {
  return own.rule.source === 'general-rule' && agreed.some(({ anchor }) => anchor.on <= own.period.dueOn);
}

/** `aside`: shown, but nobody's demand. */
function bound(owed: ServiceDemand[], aside: readonly ServiceDemand[]): NextService | null {
  const [binding, ...others] = owed.sort(byLatestDay);
  if (binding === undefined) return null;
  let { dueOn } = binding.period;
  let windowFrom = windowFromOf(binding.rule, binding.period);
  for (const { rule, period } of others) {
    dueOn = earlierOf(dueOn, period.dueOn);
    windowFrom = earlierOf(windowFrom, windowFromOf(rule, period));
  }
  return {
    dueOn,
    latestOn: binding.period.latestOn,
    windowFrom,
    sureness: binding.sureness,
    demands: [binding, ...others, ...aside],
  };
}

function ownDemand({ serviceRule, dates, servicesOn }: ServiceFacts): ServiceDemand | null {
  const anchor = serviceAnchorOf(serviceRule, dates, servicesOn);
  if (anchor === null) return null;
  const { next } = serviceSchedule(serviceRule, anchor, servicesOn);
  return {
    rule: serviceRule,
    anchor,
    period: next,
    sureness: surenessOf(serviceRule, anchor),
    agreement: null,
    isOwed: true,
  };
}

function agreedDemand(agreement: ServiceAgreement, servicesOn: readonly string[]): readonly ServiceDemand[] {
  const rule: ServiceRule = {
    everyMonths: agreement.everyMonths,
    graceMonths: 0,
    countedFrom: 'anniversary',
    anchor: 'started',
    earlyServiceCounts: true,
    source: 'agreement',
  };
  const anchor: ServiceAnchor = {
    countedFrom: 'agreement',
    on: agreement.fromOn,
    precision: 'day',
    isAssumed: false,
  };
  const { next } = serviceSchedule(rule, anchor, servicesOn);
  if (agreement.toOn !== null && next.dueOn > agreement.toOn) return [];
  return [{ rule, anchor, period: next, sureness: 'agreement', agreement, isOwed: true }];
}

function byLatestDay({ period: a }: ServiceDemand, { period: b }: ServiceDemand): number {
  return compare(a.latestOn, b.latestOn) || compare(a.dueOn, b.dueOn);
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
