import { describe, expect, it } from 'vitest';
import { COVER_LAWS, coverLaw, coverLawsOf } from '../../../domain/coverage/coverLaws.ts';
import { deadlineAlarm } from '../../../domain/coverage/deadlineAlarm.ts';
import { derivationSentence, derive } from '../../../domain/coverage/derivation.ts';

describe('derivationSentence', () => {
  it.each([
    [
      { countedFrom: 'installed', fromOn: '2025-10-14', precision: 'day', period: { days: 30 } },
      '30 days from installation on 14 Oct 2025, counting the day after as day 1: Thu 13 Nov 2025.',
    ],
    [
      { countedFrom: 'title-transfer', fromOn: '2025-11-30', precision: 'day', period: { months: 3 } },
      '3 months from title transfer on 30 Nov 2025, that month has no such day, so its last day: Sat 28 Feb 2026.',
    ],
    [
      { countedFrom: 'started', fromOn: '2025-10-14', precision: 'day', period: { months: 13 }, graceMonths: 1 },
      '12 months and 1 month of grace from startup on 14 Oct 2025, the same day of the month: Sat 14 Nov 2026.',
    ],
    [
      { countedFrom: 'sold', fromOn: '2025-10-01', precision: 'month', period: { days: 30 }, assumed: 'no-rule' },
      '30 days from sale known only to the month, so 1 Oct 2025, counting the day after as day 1: Fri 31 Oct 2025. No rule of the maker is on file: the earliest date and the shortest usual time were taken.',
    ],
  ] as const)('%o', (from, sentence) => {
    expect(derivationSentence(derive(from))).toBe(sentence);
  });
});

describe('deadlineAlarm', () => {
  /** The window of the card on the pile (F-18): 14 October to 13 November 2025; half of its 30 days is left on 29 October. */
  it.each([
    ['2025-10-14', 'none'],
    ['2025-10-28', 'none'],
    ['2025-10-29', 'half'],
    ['2025-10-30', 'days-14'],
    ['2025-11-05', 'days-14'],
    ['2025-11-06', 'days-7'],
    ['2025-11-10', 'days-3'],
    ['2025-11-12', 'days-1'],
    ['2025-11-13', 'days-1'],
    ['2025-11-14', 'late'],
  ])('on %s: %s', (today, alarm) => {
    expect(deadlineAlarm({ countedFromOn: '2025-10-14', dueOn: '2025-11-13', today })).toBe(alarm);
  });
});

describe('coverLaws', () => {
  it('are rows that name their source', () => {
    expect(COVER_LAWS.map((law) => coverLaw.parse(law))).toHaveLength(COVER_LAWS.length);
    expect(new Set(COVER_LAWS.map(({ key }) => key)).size).toBe(COVER_LAWS.length);
  });

  it.each([
    [{ country: 'DE', region: null, use: 'home' }, ['eu-legal-guarantee']],
    [{ country: ' us ', region: 'california', use: 'home' }, ['us-ca-registration-card', 'us-registration-card']],
    [{ country: 'US', region: 'FL', use: null }, ['us-fl-registration', 'us-fl-new-owner', 'us-registration-card']],
    [
      { country: 'US', region: 'Florida', use: 'home' },
      ['us-fl-registration', 'us-fl-new-owner', 'us-registration-card'],
    ],
    [{ country: 'US', region: null, use: 'commercial' }, []],
    [{ country: 'CA', region: 'CA', use: 'home' }, []],
  ] as const)('%o', (place, keys) => {
    expect(coverLawsOf(place).map(({ key }) => key)).toEqual(keys);
  });
});
