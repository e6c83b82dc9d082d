/**
 * How many injected mistakes raise a question about what was mistyped, by row of the list, and how many clean sets raise
 * one for nothing. Seeded: the same numbers on every run.
 */
import { cleanSet } from './cleanSet.ts';
import type { EnteredSet } from './enteredSet.ts';
import { MISTAKES } from './mistakes/allMistakes.ts';
import { type Question, questionsRaised } from './questionsRaised.ts';
import { type Random, randomFrom } from './random.ts';

/** What was promised beforehand. */
export const CATCH_TARGET_SHARE = 0.95;
export const FALSE_ALARM_TARGET_SHARE = 0.01;

export type RowRate = {
  readonly row: number;
  readonly title: string;
  injected: number;
  catchable: number;
  caughtOfCatchable: number;
  caught: number;
  /** Caught, and the mistake called by its own name. */
  namedOfCatchable: number;
};

export type CatchRate = {
  readonly rows: readonly RowRate[];
  readonly cleanSets: number;
  readonly falseAlarms: number;
  readonly falseAlarmsBy: ReadonlyMap<string, number>;
  /** For a closer look: the first sets that went wrong. */
  readonly missed: readonly {
    readonly row: number;
    readonly set: EnteredSet;
    readonly questions: readonly Question[];
  }[];
};

/** Names under which a row's mistake is recognised; a refused text is always one. */
const NAMES: Readonly<Record<number, readonly Question['code'][]>> = {
  1: ['o2-co2-swapped'],
  2: ['analyser-on-other-fuel'],
  3: ['air-free-typed-as-measured'],
  4: ['percent-not-ppm'],
  5: ['over-range-written-as-value'],
  6: ['ratio-mistyped'],
  7: ['decimal-point-missing'],
  8: ['fahrenheit-in-celsius'],
  9: ['celsius-in-fahrenheit'],
  10: ['inches-as-mbar', 'mbar-as-inches'],
  11: ['psi-as-bar', 'bar-as-psi'],
  12: ['absolute-not-gauge'],
  13: ['static-dynamic-swapped'],
  14: ['power-unit'],
  15: ['dial-size'],
  16: ['heating-value-times-ten'],
  17: ['digits-swapped'],
  18: ['supply-return-swapped'],
  19: ['flue-below-return'],
  20: ['read-before-steady'],
  21: ['analyser-not-zeroed'],
  22: ['instrument-out-of-date'],
  23: ['high-low-swapped'],
  24: ['copied-readings'],
  25: ['serial-confusable'],
  26: ['serial-elsewhere'],
  27: ['day-month-swapped'],
  28: ['wrong-year'],
  29: ['clock-differs'],
  30: ['date-kinds-confused'],
  31: ['feet-as-metres'],
  32: ['duplicate-party'],
  33: ['owner-is-builder'],
  34: ['fields-swapped'],
  35: ['blank-as-zero'],
};

/** Rows about what stands around the run: any question about it counts, whatever it calls the mistake. */
const AROUND: Readonly<Record<number, readonly Question['code'][]>> = {
  25: ['serial-confusable', 'serial-elsewhere'],
  27: ['day-month-swapped', 'wrong-year', 'date-kinds-confused'],
  28: ['day-month-swapped', 'wrong-year', 'date-kinds-confused'],
  30: ['day-month-swapped', 'wrong-year', 'date-kinds-confused'],
};

/** Sets in which a mistake of the row can't be made are drawn again. */
const MOST_DRAWS = 500;

export function measureCatchRate(input: {
  readonly seed: number;
  readonly mistakenSets: number;
  readonly cleanSets: number;
  readonly onProgress?: (done: number, of: number) => void;
}): CatchRate {
  const random = randomFrom(input.seed);
  const total = input.mistakenSets + input.cleanSets;
  const rows: RowRate[] = MISTAKES.map(({ row, title }) => ({
    row,
    title,
    injected: 0,
    catchable: 0,
    caughtOfCatchable: 0,
    caught: 0,
    namedOfCatchable: 0,
  }));
  const missed: CatchRate['missed'][number][] = [];
  for (let done = 0; done < input.mistakenSets; done += 1) {
    const rate = rows[done % rows.length];
    const mistake = MISTAKES[done % MISTAKES.length];
    if (rate === undefined || mistake === undefined) throw new Error('no mistakes to inject');
    const { clean, mistaken } = draw(mistake.inject, random);
    const isCatchable = mistake.isCatchable(mistaken, clean);
    const questions = questionsRaised(mistaken);
    const ids = mistakenIds(mistaken, clean);
    const names = NAMES[mistake.row] ?? [];
    const about = questions.filter(
      ({ code, entryIds }) =>
        names.includes(code) || (AROUND[mistake.row] ?? []).includes(code) || entryIds.some((id) => ids.has(id)),
    );
    rate.injected += 1;
    if (about.length > 0) rate.caught += 1;
    if (isCatchable) {
      rate.catchable += 1;
      if (about.length > 0) rate.caughtOfCatchable += 1;
      else if (missed.length < 200) missed.push({ row: mistake.row, set: mistaken, questions });
      if (about.some(({ code }) => names.includes(code) || code === 'refused')) rate.namedOfCatchable += 1;
    }
    input.onProgress?.(done, total);
  }
  let falseAlarms = 0;
  const falseAlarmsBy = new Map<string, number>();
  for (let done = 0; done < input.cleanSets; done += 1) {
    const questions = questionsRaised(cleanSet(random));
    if (questions.length > 0) falseAlarms += 1;
    for (const detail of new Set(questions.map((question) => question.detail))) {
      falseAlarmsBy.set(detail, (falseAlarmsBy.get(detail) ?? 0) + 1);
    }
    input.onProgress?.(input.mistakenSets + done, total);
  }
  return { rows, cleanSets: input.cleanSets, falseAlarms, falseAlarmsBy, missed };
}

function draw(
  inject: (typeof MISTAKES)[number]['inject'],
  random: Random,
): { readonly clean: EnteredSet; readonly mistaken: EnteredSet } {
  for (let tries = 0; tries < MOST_DRAWS; tries += 1) {
    const clean = cleanSet(random);
    const mistaken = inject(clean, random);
    if (mistaken !== null) return { clean, mistaken };
  }
  throw new Error('no set in which this mistake can be made');
}

function mistakenIds(mistaken: EnteredSet, clean: EnteredSet): ReadonlySet<string> {
  const before = new Map(clean.entries.map((entry) => [entry.id, entry]));
  return new Set(
    mistaken.entries.flatMap((entry) => {
      const was = before.get(entry.id);
      return was?.text === entry.text && was.atS === entry.atS ? [] : [entry.id];
    }),
  );
}
