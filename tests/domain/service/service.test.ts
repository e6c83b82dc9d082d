import { describe, expect, it } from 'vitest';
import { firstYearContacts } from '../../../domain/service/firstYearContacts.ts';
import { reminderOn, reminderPlan } from '../../../domain/service/reminderCadence.ts';
import { areaOf, ridableMonth, roundMonth } from '../../../domain/service/roundMonth.ts';

describe('firstYearContacts: a call after 2–4 weeks, a look-in after 6–12 months (common practice)', () => {
  it('counts both from the startup', () => {
    expect(firstYearContacts({ startedOn: '2025-08-31', closed: [], visitsOn: [] })).toEqual([
      { kind: 'first-call', windowFrom: '2025-09-14', latestOn: '2025-09-28', goneOn: '2025-11-30' },
      { kind: 'look-in', windowFrom: '2026-02-28', latestOn: '2026-08-31', goneOn: '2026-09-30' },
    ]);
  });

  it('leaves out what was done: the call by a note, the look-in by any visit in its time', () => {
    const contacts = firstYearContacts({ startedOn: '2025-08-31', closed: ['first-call'], visitsOn: ['2025-10-01'] });
    expect(contacts.map(({ kind }) => kind)).toEqual(['look-in']);
    expect(firstYearContacts({ startedOn: '2025-08-31', closed: ['first-call'], visitsOn: ['2026-02-28'] })).toEqual(
      [],
    );
  });
});

describe('reminderCadence: 60, 30, 14, 3 days before, then weekly until the latest day (common practice, no source)', () => {
  const due = { dueOn: '2026-10-14', latestOn: '2026-11-14' };

  it('by hand for a service due on 14 October with a month of grace', () => {
    expect(reminderPlan(due).map(({ stage, sendOn }) => `${stage} ${sendOn}`)).toEqual([
      'before-60 2026-08-15',
      'before-30 2026-09-14',
      'before-14 2026-09-30',
      'before-3 2026-10-11',
      'week-1 2026-10-18',
      'week-2 2026-10-25',
      'week-3 2026-11-01',
      'week-4 2026-11-08',
    ]);
  });

  it.each([
    ['2026-08-14', null, 'before-60'],
    ['2026-08-15', 'before-60', 'before-30'],
    ['2026-10-12', 'before-3', 'week-1'],
    ['2026-11-14', 'week-4', null],
    ['2026-11-15', null, null],
  ])('on %s stands %s, next %s', (today, now, next) => {
    const found = reminderOn(due, today);
    expect([found.now?.stage ?? null, found.next?.stage ?? null]).toEqual([now, next]);
  });

  it('ends with the due day where there is no grace', () => {
    expect(reminderPlan({ dueOn: '2026-10-14', latestOn: '2026-10-14' })).toHaveLength(4);
  });
});

describe('roundMonth: no day of the round is past the latest day', () => {
  it.each([
    ['2026-10-14', '2026-11-14', '2026-10', 'the whole of October lies before 14 November'],
    ['2026-10-14', '2026-10-14', '2026-09', 'without grace the round is ridden in September'],
    ['2026-10-14', '2026-10-31', '2026-10', 'the last day of October just does'],
    ['2027-01-05', '2027-01-20', '2026-12', 'over the turn of the year'],
  ])('due %s, latest %s: %s (%s)', (dueOn, latestOn, month) => {
    expect(roundMonth({ dueOn, latestOn })).toBe(month);
  });

  it('rides now what should have been ridden', () => {
    expect(ridableMonth('2026-09', '2026-10-02')).toBe('2026-10');
    expect(ridableMonth('2026-12', '2026-10-02')).toBe('2026-12');
  });

  it.each([
    ['B4T 2K1', 'B4T'],
    ['SW1A 1AA', 'SW1A'],
    ['75011', '750'],
    ['94110-1234', '941'],
    [' 10115 ', '101'],
    ['B4T2K1', 'B4T'],
    ['', null],
    [null, null],
  ])('postcode %s lies in area %s', (postcode, area) => {
    expect(areaOf(postcode)).toBe(area);
  });
});
