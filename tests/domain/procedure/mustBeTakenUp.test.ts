import { describe, expect, it } from 'vitest';
import { mustBeTakenUp } from '../../../domain/procedure/mustBeTakenUp.ts';
import { DAY_START, emptyRecord, reading, withAnswer, withReading } from '../../support/runRecordBuilder.ts';

const sheet = { lapseHours: { tightness: 24, roomCo: 8, analyserZero: 6, pressure: 24 } };
const hoursOn = (hours: number) => new Date(Date.parse(DAY_START) + hours * 3_600_000).toISOString();
const begun = { ...emptyRecord('natural-gas'), startedAt: DAY_START };
const asked = (record: Parameters<typeof mustBeTakenUp>[0]['record'], now: string, reopenedAt: string | null = null) =>
  mustBeTakenUp({ record, sheet, reopenedAt, now });

describe('mustBeTakenUp', () => {
  it('counts from the last thing that was recorded to whatever lapses first', () => {
    const record = withReading(begun, reading('room-co', 'roomCoPpm', 0, hoursOn(3)));
    expect(asked(record, hoursOn(9))).toBe(false);
    expect(asked(record, hoursOn(9.1))).toBe(true);
    expect(asked(withAnswer(record, 'seen', 'yes', hoursOn(8)), hoursOn(9.1))).toBe(false);
  });

  it('counts from the beginning where nothing was recorded, and not before there was one', () => {
    expect(asked(begun, hoursOn(5))).toBe(false);
    expect(asked(begun, hoursOn(72))).toBe(true);
    expect(asked({ ...begun, startedAt: null }, hoursOn(72))).toBe(false);
  });

  it('is settled by having been taken up, until it is left again', () => {
    expect(asked(begun, hoursOn(73), hoursOn(72))).toBe(false);
    expect(asked(begun, hoursOn(79), hoursOn(72))).toBe(true);
  });

  it('takes it up anew where that was by a clock that ran ahead', () => {
    expect(asked(begun, hoursOn(1), hoursOn(72))).toBe(true);
    // A few seconds are how clocks are.
    expect(asked(begun, hoursOn(1), hoursOn(1.01))).toBe(false);
  });

  it('is not settled by one answer of a clock that ran ahead', () => {
    const record = withAnswer(begun, 'seen', 'yes', hoursOn(30 * 24));
    expect(asked(record, hoursOn(72))).toBe(true);
    expect(asked(record, hoursOn(2))).toBe(false);
  });
});
