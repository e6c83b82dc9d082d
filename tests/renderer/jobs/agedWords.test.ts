import { expect, it } from 'vitest';
import { agedWords } from '../../../renderer/jobs/agedWords.ts';

it('says what was asked on one day together, the oldest first, and counts what a line has no room for', () => {
  const aged = (itemKey: string, askedDaysAgo: number) => ({ itemKey, askedDaysAgo });
  expect(agedWords([aged('power', 9), aged('gas-live', 34), aged('heat-load', 9)])).toBe(
    'Gas live (asked 34 days ago); Permanent power at the boiler, Heat can go somewhere (asked 9 days ago)',
  );
  const four = ['gas-live', 'power', 'condensate', 'water'].map((key) => aged(key, 30));
  expect(agedWords(four, 2)).toBe('Gas live, Permanent power at the boiler and 2 more (asked 30 days ago)');
  expect(agedWords(four, 4)).not.toContain('more');
});
