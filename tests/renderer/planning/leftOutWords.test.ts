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
      'as it is booked or pinned, nobody can: at that time the work and the ways there and back do not fit into the working hours',
    );
  });

  it('should speak of the length and not of hours nobody promised', () => {
    const obstacles = [{ obstacle: { code: 'window-outside-hours' }, days: 5 }] as const;
    expect(leftOutWords({ code: 'nobody-can', isPinned: false, obstacles: [...obstacles] })).toBe(
      'nobody can: the work and the ways there and back do not fit into the working hours',
    );
  });
});
