import { expect, it } from 'vitest';
import { readyWords } from '../../../renderer/jobs/readyWords.ts';

it('says what keeps a job from a firm booking, and what is to be asked again either way', () => {
  const aged = [{ itemKey: 'power', askedDaysAgo: 9 }];
  expect(readyWords({ openReadiness: [], agedReadiness: [] })).toBe('ready to book');
  expect(readyWords({ openReadiness: [], agedReadiness: aged })).toBe('ready to book, 1 to ask again');
  expect(readyWords({ openReadiness: ['vent'], agedReadiness: aged })).toBe('1 readiness item open, 1 to ask again');
  expect(readyWords({ openReadiness: ['vent', 'gas-live'], agedReadiness: [] })).toBe('2 readiness items open');
});
