/** Windows of arrival for a caller. Two hours are common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Slot } from '../../../domain/schedule/insertSlots.ts';
import { offerWindows } from '../../../domain/schedule/offerWindows.ts';

const slot = (date: string, fromMin: number, toMin: number): Slot => ({
  technicianId: 'ada',
  date,
  fromMin,
  toMin,
  extraTravelMin: 10,
  daysLateKey: 0,
  daysOutside: 0,
  promisesMoved: 0,
  wishesLacking: 0,
  afterVisitId: null,
  beforeVisitId: null,
});
const times = (slots: readonly Slot[], count = 10) =>
  offerWindows(slots, count).map(({ date, fromMin, toMin }) => [date, fromMin, toMin]);

describe('offerWindows', () => {
  it('begins on a quarter of an hour and offers a free day more than once, other days first', () => {
    expect(times([slot('mon', 481, 900), slot('tue', 600, 640)])).toEqual([
      ['mon', 495, 615],
      ['tue', 600, 640],
      ['mon', 615, 735],
      ['mon', 735, 855],
      ['mon', 855, 900],
    ]);
  });

  it('offers all that is in time before anything late', () => {
    const late = { ...slot('tue', 480, 500), daysLateKey: 10_000 };
    expect(times([slot('mon', 480, 900), late]).at(-1)).toEqual(['tue', 480, 500]);
  });

  it('keeps to the minute where no quarter fits, and to the number asked for', () => {
    expect(times([slot('mon', 481, 484)])).toEqual([['mon', 484, 484]]);
    expect(times([slot('mon', 480, 900)], 2)).toHaveLength(2);
    expect(times([])).toEqual([]);
  });
});
