import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import type { KnownDate } from '../../../domain/coverage/knownDate.ts';
import { registrationDeadline } from '../../../domain/coverage/registrationDeadline.ts';
import type { CoverDate, SheetCover } from '../../../domain/procedure/modelSheet.ts';

const MAKER = { kind: 'maker', source: 'an invented sheet' } as const;

function cover(registration: SheetCover['registration']): SheetCover {
  return {
    terms: [],
    registration,
    conditions: {
      serviceEveryMonths: 12,
      graceMonths: 1,
      serviceCountedFrom: 'anniversary',
      waterQualityRecorded: false,
      licensedInstaller: true,
      originalOwner: false,
      use: 'any',
      transferWindowDays: null,
    },
  };
}

function on(kind: CoverDate, date: string): KnownDate {
  return { kind, on: date, precision: 'day' };
}

describe('registrationDeadline', () => {
  it('the card on the pile (F-18): 30 days from installation on 14 October is 13 November, 8 days left on 5 November', () => {
    const deadline = registrationDeadline({
      cover: cover({ window: { days: 30 }, countedFrom: 'installed', basis: MAKER }),
      dates: [on('installed', '2025-10-14'), on('started', '2025-10-20')],
      today: '2025-11-05',
    });
    expect(deadline).toMatchObject({
      dueOn: '2025-11-13',
      daysLeft: 8,
      countedFrom: 'installed',
      isAssumed: false,
      weekday: 4,
    });
  });

  it('takes the earliest date when the maker names none', () => {
    const deadline = registrationDeadline({
      cover: cover({ window: { days: 60 }, countedFrom: 'earliest', basis: MAKER }),
      dates: [on('started', '2026-03-02'), on('made', '2025-01-10'), on('installed', '2026-02-20')],
      today: '2026-03-02',
    });
    expect(deadline).toMatchObject({ countedFrom: 'installed', dueOn: '2026-04-21', isAssumed: false });
  });

  it('says so when it had to take the earliest date and the shortest window', () => {
    const deadline = registrationDeadline({ cover: null, dates: [on('started', '2026-01-31')], today: '2026-01-31' });
    expect(deadline).toMatchObject({ isAssumed: true, window: { days: 30 }, dueOn: '2026-03-02', daysLeft: 30 });
  });

  it('has no deadline while no date is known', () => {
    expect(registrationDeadline({ cover: null, dates: [on('made', '2026-01-01')], today: '2026-01-31' })).toBeNull();
  });

  it.each([
    ['2025-11-30', 3, '2026-02-28'],
    ['2027-11-30', 3, '2028-02-29'],
    ['2026-01-31', 1, '2026-02-28'],
  ])('ends %s + %i months on %s: a day the month lacks becomes its last day', (start, months, dueOn) => {
    const deadline = registrationDeadline({
      cover: cover({ window: { months }, countedFrom: 'title-transfer', basis: MAKER }),
      dates: [on('title-transfer', start)],
      today: start,
    });
    expect(deadline?.dueOn).toBe(dueOn);
  });

  it('agrees with the reference date library luxon over random dates and windows', () => {
    const anyDay = fc.date({ min: new Date('2000-01-01'), max: new Date('2099-12-31'), noInvalidDate: true });
    fc.assert(
      fc.property(anyDay, anyDay, fc.integer({ min: 1, max: 400 }), fc.boolean(), (start, today, count, inMonths) => {
        const startOn = start.toISOString().slice(0, 10);
        const todayOn = today.toISOString().slice(0, 10);
        const window = inMonths ? { months: Math.ceil(count / 10) } : { days: count };
        const deadline = registrationDeadline({
          cover: cover({ window, countedFrom: 'started', basis: MAKER }),
          dates: [on('started', startOn)],
          today: todayOn,
        });
        const expected = DateTime.fromISO(startOn, { zone: 'utc' }).plus(window);
        expect(deadline?.dueOn).toBe(expected.toISODate());
        expect(deadline?.weekday).toBe(expected.weekday);
        expect(deadline?.daysLeft).toBe(expected.diff(DateTime.fromISO(todayOn, { zone: 'utc' }), 'days').days);
      }),
      { numRuns: 20_000 },
    );
  });
});
