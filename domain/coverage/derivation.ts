/** How a date came about, as data, and the one sentence that says it: what was counted, from where, by which rule. */
import { Temporal } from 'temporal-polyfill';
import type { CoverDate } from '../procedure/modelSheet.ts';
import { SHORT_MONTHS, SHORT_WEEKDAYS } from '../text/calendarWords.ts';
import { isClamped, lastDayOf, type Period, weekdayOf } from './period.ts';

/** What a period can be counted from. */
export type CountedFrom = CoverDate | 'last-service' | 'owner-change' | 'agreement';

export type Derivation = {
  readonly countedFrom: CountedFrom;
  readonly fromOn: string;
  /** As it is known; anything but a day was counted from its first day. */
  readonly precision: 'day' | 'month' | 'year';
  readonly period: Period;
  /** Grace that is part of the period, for the sentence. */
  readonly graceMonths: number;
  readonly on: string;
  /** 1 Monday … 7 Sunday. */
  readonly weekday: number;
  /** Why this day is counted from although no rule names it. */
  readonly assumed: 'no-rule' | 'named-date-unknown' | null;
};

export function derive(from: {
  readonly countedFrom: CountedFrom;
  readonly fromOn: string;
  readonly precision: Derivation['precision'];
  readonly period: Period;
  readonly graceMonths?: number;
  readonly assumed?: Derivation['assumed'];
}): Derivation {
  const on = lastDayOf(from.fromOn, from.period);
  return { ...from, graceMonths: from.graceMonths ?? 0, assumed: from.assumed ?? null, on, weekday: weekdayOf(on) };
}

/** "30 days from installation on 14 Oct 2025, counting the day after as day 1: Thu 13 Nov 2025." */
export function derivationSentence(derivation: Derivation): string {
  const { period, fromOn, on } = derivation;
  const from = `${EVENTS[derivation.countedFrom]} ${onWords(derivation)}`;
  const rule =
    'days' in period
      ? 'counting the day after as day 1'
      : isClamped(fromOn, on, period)
        ? 'that month has no such day, so its last day'
        : 'the same day of the month';
  return `${periodWords(derivation)} from ${from}, ${rule}: ${SHORT_WEEKDAYS[derivation.weekday - 1]} ${dayText(on)}.${assumedWords(derivation)}`;
}

export function periodText(period: Period): string {
  const [count, unit] = 'days' in period ? [period.days, 'day'] : [period.months, 'month'];
  return `${count} ${unit}${count === 1 ? '' : 's'}`;
}

function periodWords({ period, graceMonths }: Derivation): string {
  if (graceMonths === 0 || 'days' in period) return periodText(period);
  return `${periodText({ months: period.months - graceMonths })} and ${periodText({ months: graceMonths })} of grace`;
}

function onWords({ fromOn, precision }: Derivation): string {
  if (precision === 'day') return `on ${dayText(fromOn)}`;
  return `known only to the ${precision}, so ${dayText(fromOn)}`;
}

function assumedWords({ assumed }: Derivation): string {
  if (assumed === null) return '';
  return assumed === 'no-rule'
    ? ' No rule of the maker is on file: the earliest date and the shortest usual time were taken.'
    : ' The date to count from is not known: another one that is known was taken.';
}

const EVENTS: Readonly<Record<CountedFrom, string>> = {
  made: 'making',
  sold: 'sale',
  installed: 'installation',
  started: 'startup',
  occupied: 'moving in',
  'title-transfer': 'title transfer',
  'last-service': 'the last service',
  'owner-change': 'the change of owner',
  agreement: 'the start of the service agreement',
};

function dayText(day: string): string {
  const date = Temporal.PlainDate.from(day);
  return `${date.day} ${SHORT_MONTHS[date.month - 1]} ${date.year}`;
}
