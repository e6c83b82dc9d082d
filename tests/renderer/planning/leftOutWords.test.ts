import { describe, expect, it } from 'vitest';
import { leftOutWords } from '../../../renderer/planning/leftOutWords.ts';

describe('leftOutWords', () => {
  it('should count days as one person’s each, so that 17 of them are understood in a plan of nine days', () => {
    const words = leftOutWords({
      code: 'nobody-can',
      isPinned: false,
      obstacles: [
        { obstacle: { code: 'skill-missing', skill: 'gas' }, days: 17 },
        { obstacle: { code: 'absent' }, days: 1 },
      ],
    });
    expect(words).toBe(
      'nobody can: lacks a licence for this gas work (17 of 18 working days, each person’s counted); away or no working hours (1 of 18 working days, each person’s counted)',
    );
  });

  it('should not count where one thing stands in the way on every day', () => {
    const words = leftOutWords({
      code: 'nobody-can',
      isPinned: true,
      obstacles: [{ obstacle: { code: 'window-outside-hours' }, days: 1 }],
    });
    expect(words).toBe(
      'as it is booked or pinned, nobody can: the promised hours do not fit into the working hours and the ways',
    );
  });
});
