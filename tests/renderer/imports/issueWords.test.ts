import { describe, expect, it } from 'vitest';
import { importIssueWords } from '../../../renderer/imports/issueWords.ts';

describe('a cell that can be two days', () => {
  it('should be shown with the month as a word, so that the two can be told apart', () => {
    expect(importIssueWords('day-month-ambiguous', '03/04/2024: 2024-04-03 / 2024-03-04')).toBe(
      'Day or month first? 03/04/2024: 3 Apr 2024 / 4 Mar 2024',
    );
  });
});
