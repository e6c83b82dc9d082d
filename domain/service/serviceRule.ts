/** By which rule an appliance's services fall due: its sheet's, or the general one, and how sure the day is. */
import type { CountedFrom } from '../coverage/derivation.ts';
import type { KnownDate } from '../coverage/knownDate.ts';
import { cautiousDay } from '../coverage/period.ts';
import type { CoverDate, ModelSheet } from '../procedure/modelSheet.ts';

export type ServiceRule = {
  readonly everyMonths: number;
  readonly graceMonths: number;
  /** `anniversary`: every due day is counted from the anchor. `last-service`: from the service before. */
  readonly countedFrom: 'anniversary' | 'last-service';
  readonly anchor: CoverDate;
  /** false: a service more than the grace before its due day does not count for it. */
  readonly earlyServiceCounts: boolean;
  readonly source: 'maker-sheet' | 'general-rule' | 'agreement';
};

/** Once a year, counted from startup, no grace assumed. Common practice, no source. */
export const GENERAL_SERVICE_RULE: ServiceRule = {
  everyMonths: 12,
  graceMonths: 0,
  countedFrom: 'anniversary',
  anchor: 'started',
  earlyServiceCounts: true,
  source: 'general-rule',
};

export function serviceRuleOf(sheet: Pick<ModelSheet, 'cover' | 'maker'> | null): ServiceRule {
  const conditions = sheet?.cover?.conditions;
  if (sheet === null || conditions === undefined) return GENERAL_SERVICE_RULE;
  return {
    everyMonths: conditions.serviceEveryMonths,
    graceMonths: conditions.graceMonths,
    countedFrom: conditions.serviceCountedFrom,
    anchor: conditions.serviceAnchor ?? 'started',
    earlyServiceCounts: conditions.earlyServiceCounts ?? true,
    source: sheet.maker === null ? 'general-rule' : 'maker-sheet',
  };
}

/** `date-assumed`: another date than the rule's had to be taken, or it is known only to the month or year. */
export const SURENESSES = ['maker-sheet', 'date-assumed', 'general-rule', 'agreement'] as const;
export type Sureness = (typeof SURENESSES)[number];

export type ServiceAnchor = {
  readonly countedFrom: CountedFrom;
  readonly on: string;
  readonly precision: KnownDate['precision'];
  readonly isAssumed: boolean;
};

/** Nearest in meaning to a startup first. */
const INSTEAD: readonly CoverDate[] = ['started', 'installed', 'occupied', 'title-transfer', 'sold'];

/** null: no date is known that services could be counted from. */
export function serviceAnchorOf(
  rule: ServiceRule,
  dates: readonly KnownDate[],
  servicesOn: readonly string[],
): ServiceAnchor | null {
  const date = firstOf(rule.anchor, dates);
  if (date !== undefined) {
    return {
      countedFrom: date.kind,
      on: cautiousDay(date),
      precision: date.precision,
      isAssumed: date.kind !== rule.anchor,
    };
  }
  const first = servicesOn.toSorted()[0];
  return first === undefined ? null : { countedFrom: 'last-service', on: first, precision: 'day', isAssumed: true };
}

function firstOf(anchor: CoverDate, dates: readonly KnownDate[]): KnownDate | undefined {
  const named = dates.find((one) => one.kind === anchor);
  if (named !== undefined) return named;
  for (const kind of INSTEAD) {
    const found = dates.find((one) => one.kind === kind);
    if (found !== undefined) return found;
  }
  return undefined;
}

export function surenessOf(rule: ServiceRule, anchor: ServiceAnchor): Sureness {
  if (rule.source === 'general-rule') return 'general-rule';
  return anchor.isAssumed || anchor.precision !== 'day' ? 'date-assumed' : 'maker-sheet';
}
