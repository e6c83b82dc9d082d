import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import {
  addMonths,
  daysFromTo,
  lastDayOf,
  lastDayOfMonth,
  monthBefore,
  weekdayOf,
} from '../../../domain/coverage/period.ts';
import type { ServiceRule } from '../../../domain/service/serviceRule.ts';
import { serviceSchedule } from '../../../domain/service/serviceSchedule.ts';

const anyDay = fc
  .date({ min: new Date('1990-01-01'), max: new Date('2120-12-31'), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10));

describe('periods against the reference date library luxon', () => {
  it('days, months, weekdays and days between: 25 000 random cases', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: -600, max: 600 }), fc.boolean(), (from, count, inMonths) => {
        const period = inMonths ? { months: count } : { days: count };
        const ends = lastDayOf(from, period);
        const expected = utc(from).plus(period);
        expect(ends).toBe(expected.toISODate());
        expect(weekdayOf(ends)).toBe(expected.weekday);
        expect(daysFromTo(from, ends)).toBe(expected.diff(utc(from), 'days').days);
      }),
      { numRuns: 25_000 },
    );
  });

  it('ends of months and the month before: 5 000 random cases', () => {
    fc.assert(
      fc.property(anyDay, (day) => {
        const month = day.slice(0, 7);
        expect(lastDayOfMonth(month)).toBe(utc(day).endOf('month').toISODate());
        expect(monthBefore(month)).toBe(utc(day).minus({ months: 1 }).toFormat('yyyy-MM'));
      }),
      { numRuns: 5000 },
    );
  });

  it('always lands in the target month, on the same day or its last one', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: 0, max: 600 }), (from, months) => {
        const ends = addMonths(from, months);
        const [year, month] = [Number(from.slice(0, 4)), Number(from.slice(5, 7)) - 1 + months];
        expect(ends.slice(0, 7)).toBe(`${year + Math.floor(month / 12)}-${String((month % 12) + 1).padStart(2, '0')}`);
        expect(ends.slice(8) === from.slice(8) || ends === lastDayOfMonth(ends.slice(0, 7))).toBe(true);
      }),
      { numRuns: 5000 },
    );
  });
});

describe('due services against the reference date library luxon', () => {
  const anyRule: fc.Arbitrary<ServiceRule> = fc.record({
    everyMonths: fc.integer({ min: 1, max: 24 }),
    graceMonths: fc.integer({ min: 0, max: 6 }),
    countedFrom: fc.constantFrom('anniversary' as const, 'last-service' as const),
    anchor: fc.constant('started' as const),
    earlyServiceCounts: fc.boolean(),
    source: fc.constant('maker-sheet' as const),
  });

  it('every due and latest day is counted from its own start: 4 000 random cases', () => {
    fc.assert(
      fc.property(anyRule, anyDay, fc.array(fc.integer({ min: 1, max: 4000 }), { maxLength: 6 }), (rule, on, after) => {
        const services = after.map((days) => lastDayOf(on, { days }));
        const anchor = { countedFrom: 'started', on, precision: 'day', isAssumed: false } as const;
        const { past, next } = serviceSchedule(rule, anchor, services);
        for (const [index, period] of [...past, next].entries()) {
          expect(period.nth).toBe(index + 1);
          const months = rule.countedFrom === 'anniversary' ? period.nth * rule.everyMonths : rule.everyMonths;
          expect(period.dueOn).toBe(utc(period.fromOn).plus({ months }).toISODate());
          expect(period.latestOn).toBe(
            utc(period.fromOn)
              .plus({ months: months + rule.graceMonths })
              .toISODate(),
          );
          const startsAtAnchor = rule.countedFrom === 'anniversary' || index === 0;
          expect(period.fromOn).toBe(startsAtAnchor ? on : past[index - 1]?.doneOn);
        }
      }),
      { numRuns: 4000 },
    );
  });
});

function utc(day: string): DateTime {
  return DateTime.fromISO(day, { zone: 'utc' });
}
