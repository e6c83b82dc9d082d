import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Absence, workSpans } from '../../../domain/schedule/workSpans.ts';

const WEDNESDAY = '2026-03-04';
const hours = [{ weekday: 3, fromMin: 480, toMin: 1020, breakFromMin: 720, breakToMin: 750 }];
const away = (patch: Partial<Absence>): Absence => ({
  fromOn: WEDNESDAY,
  toOn: WEDNESDAY,
  fromMin: null,
  toMin: null,
  reason: 'course',
  ...patch,
});

describe('the spans of a working day', () => {
  it.each([
    [
      'the break cuts the day',
      [],
      [
        [480, 720],
        [750, 1020],
      ],
    ],
    ['a whole day away leaves nothing', [away({})], []],
    [
      'away from ten to one',
      [away({ fromMin: 600, toMin: 780 })],
      [
        [480, 600],
        [780, 1020],
      ],
    ],
    [
      'away before and after the hours',
      [away({ fromMin: 0, toMin: 480 }), away({ fromMin: 1020, toMin: 1440 })],
      [
        [480, 720],
        [750, 1020],
      ],
    ],
    [
      'an absence of another day',
      [away({ fromOn: '2026-03-05', toOn: '2026-03-06' })],
      [
        [480, 720],
        [750, 1020],
      ],
    ],
  ])('%s', (_what, absences, spans) => {
    expect(workSpans(hours, absences, WEDNESDAY).map(({ fromMin, toMin }) => [fromMin, toMin])).toEqual(spans);
  });

  it('has none on a weekday without hours', () => {
    expect(workSpans(hours, [], '2026-03-05')).toEqual([]);
  });

  it('always holds exactly the minutes that no absence and no break covers', () => {
    const absence = fc
      .tuple(fc.integer({ min: 0, max: 1439 }), fc.integer({ min: 1, max: 600 }))
      .map(([fromMin, length]) => away({ fromMin, toMin: Math.min(1440, fromMin + length) }));
    fc.assert(
      fc.property(fc.array(absence, { maxLength: 6 }), (absences) => {
        const spans = workSpans(hours, absences, WEDNESDAY);
        for (let minute = 470; minute < 1030; minute += 1) {
          const isWork =
            minute >= 480 &&
            minute < 1020 &&
            !(minute >= 720 && minute < 750) &&
            !absences.some((one) => (one.fromMin ?? 0) <= minute && minute < (one.toMin ?? 1440));
          expect(spans.some((span) => span.fromMin <= minute && minute < span.toMin)).toBe(isWork);
        }
      }),
    );
  });
});
