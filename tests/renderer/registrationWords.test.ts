import { describe, expect, it } from 'vitest';
import { registrationDeadline } from '../../domain/coverage/registrationDeadline.ts';
import { PACKET_GAPS } from '../../electron/documents/packet/packetGapWords.ts';
import { daysLeftWords, deadlineWords, submittedInTimeWords } from '../../renderer/registrations/deadlineWords.ts';
import { gapWords, hasGapWords } from '../../renderer/registrations/gapWords.ts';

describe('deadline words', () => {
  it('counts the days of the card that lay on the pile: 30 days from 14 October is 13 November, 8 days left on the 5th', () => {
    const deadline = registrationDeadline({
      cover: null,
      dates: [{ kind: 'installed', on: '2026-10-14', precision: 'day' }],
      today: '2026-11-05',
    });
    if (deadline === null) throw new Error('the case has a date');
    expect(daysLeftWords(deadline.daysLeft)).toBe('8 days left');
    expect(deadlineWords(deadline)).toContain('Last day Fri 13 Nov 2026: 30 days from “installed” on 14 Oct 2026.');
    expect(deadlineWords(deadline)).toContain('Assumed');
  });

  it.each([
    [1, '1 day left'],
    [0, 'today is the last day'],
    [-1, '1 day late'],
    [-3, '3 days late'],
  ])('should say %d as %s', (days, words) => {
    expect(daysLeftWords(days)).toBe(words);
  });

  it('should hold the day of submitting against the last day', () => {
    expect(submittedInTimeWords('2026-11-05', '2026-11-13')).toBe('8 days before its last day');
    expect(submittedInTimeWords('2026-11-13', '2026-11-13')).toBe('on its last day');
    expect(submittedInTimeWords('2026-11-14', '2026-11-13')).toBe('1 day after its last day');
  });
});

describe('gapWords', () => {
  it.each(Object.keys(PACKET_GAPS))('should have words of its own for %s', (code) => {
    expect(hasGapWords(code)).toBe(true);
  });

  it('should put a quantity and a date into words', () => {
    const place = { stepKey: null, itemKey: null };
    expect(gapWords({ code: 'water-quality-missing', where: 'visit', detail: 'waterPh', ...place })).toBe(
      'Water quality: pH',
    );
    expect(gapWords({ code: 'date-missing', where: 'appliance', detail: 'occupied', ...place })).toBe(
      'A date: moved in',
    );
  });
});
