/** How long an answer holds is common practice, no source: the tests hold its ends, not its numbers. */
import { describe, expect, it } from 'vitest';
import {
  agedAnswers,
  CALL_DAYS,
  type GivenAnswer,
  readinessJudgedOn,
} from '../../../domain/procedure/agedReadiness.ts';
import { READINESS_ITEMS } from '../../../domain/procedure/readiness.ts';

const asked = (itemKey: string, answer: GivenAnswer['answer'] = 'yes'): GivenAnswer => ({
  itemKey,
  answer,
  askedOn: '2026-03-02',
});

describe('agedAnswers', () => {
  it('holds a switched thing for a week to the day, and counts on from there', () => {
    expect(agedAnswers([asked('power')], '2026-03-09')).toEqual([]);
    expect(agedAnswers([asked('power')], '2026-03-10')).toEqual([{ itemKey: 'power', askedDaysAgo: 8 }]);
    // Over the change of the clock a day is a day.
    expect(agedAnswers([asked('power')], '2026-04-05')).toEqual([{ itemKey: 'power', askedDaysAgo: 34 }]);
  });

  it('never asks again what cannot change, what is not needed, and what is open anyway', () => {
    const years = '2029-03-02';
    expect(
      agedAnswers(
        ['boiler-known', 'gas-load', 'permit', 'manual', 'technician'].map((key) => asked(key)),
        years,
      ),
    ).toEqual([]);
    for (const answer of ['no', 'unknown', 'not-applicable'] as const)
      expect(agedAnswers([asked('power', answer)], years)).toEqual([]);
  });

  it('names only items that are asked at all', () => {
    const keys = READINESS_ITEMS.map(({ key }) => key);
    const aged = agedAnswers(
      [...keys, 'no-such-item'].map((key) => asked(key)),
      '2029-03-02',
    );
    expect(aged.length).toBe(9);
    expect(aged.every(({ itemKey }) => keys.includes(itemKey))).toBe(true);
  });
});

describe('readinessJudgedOn', () => {
  it('looks at the day of the visit once that can be called about, and at today before and after', () => {
    expect(readinessJudgedOn('2026-03-02', null)).toBe('2026-03-02');
    expect(readinessJudgedOn('2026-03-02', '2026-03-05')).toBe('2026-03-05');
    expect(CALL_DAYS).toBe(3);
    expect(readinessJudgedOn('2026-03-02', '2026-03-06')).toBe('2026-03-02');
    expect(readinessJudgedOn('2026-03-02', '2026-02-27')).toBe('2026-03-02');
  });
});
