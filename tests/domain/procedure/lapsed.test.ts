import { describe, expect, it } from 'vitest';
import { runProgress } from '../../../domain/procedure/progress.ts';
import type { RunRecord } from '../../../domain/procedure/runRecord.ts';
import { lapsedOf } from '../../support/lapsedOf.ts';
import {
  DAY_START,
  emptyRecord,
  reading,
  secondsAfter,
  withAnswer,
  withReading,
} from '../../support/runRecordBuilder.ts';
import { readShippedSheet } from '../../support/shippedSheets.ts';
import { anItem, aStep, tinySheet } from '../../support/tinySheet.ts';

const HOUR_S = 3600;
const options = [
  { value: 'tight', label: 'Tight' },
  { value: 'leaks', label: 'Leaks', outcome: 'stop' },
];
const sheet = tinySheet([
  aStep('before', [
    anItem('read', 'room-co', { quantity: 'roomCoPpm', blocks: ['firing'] }),
    anItem('read', 'zero', { quantity: 'freshAirO2VolPct' }),
    anItem('read', 'cold', { quantity: 'systemPressureBarG', blocks: ['firing'] }),
    anItem('read', 'kept', { quantity: 'systemPressureBarG', lapses: null }),
    anItem('choose', 'tight', { options, lapses: 'tightness', blocks: ['firing'] }),
    anItem('read', 'voltage', { quantity: 'supplyVoltageV' }),
  ]),
  aStep('fire', [anItem('confirm', 'lit')], { needsClear: 'firing' }),
]);

const full: RunRecord = [
  reading('room-co', 'roomCoPpm', 0, DAY_START),
  reading('zero', 'freshAirO2VolPct', 20.9, DAY_START),
  reading('cold', 'systemPressureBarG', 1.2, DAY_START),
  reading('kept', 'systemPressureBarG', 1.2, DAY_START),
  reading('voltage', 'supplyVoltageV', 230, DAY_START),
].reduce(withReading, withAnswer(emptyRecord('natural-gas'), 'tight', 'tight', DAY_START));

const lapsedAfter = (hours: number) =>
  lapsedOf({ sheet, record: full, reopenedAt: secondsAfter(DAY_START, hours * HOUR_S) }).map((one) => one.itemKey);

describe('what has grown too old', () => {
  it('follows the hours of the sheet, each kind its own', () => {
    expect(lapsedAfter(8)).toEqual([]);
    expect(lapsedAfter(8.1)).toEqual(['room-co', 'zero']);
    expect(lapsedAfter(24.1)).toEqual(['room-co', 'zero', 'cold', 'tight']);
  });

  it('says what it is and how old', () => {
    expect(lapsedOf({ sheet, record: full, reopenedAt: secondsAfter(DAY_START, 9 * HOUR_S) })[0]).toEqual({
      stepKey: 'before',
      itemKey: 'room-co',
      lapse: 'roomCo',
      hours: 8,
      lastAt: DAY_START,
    });
  });

  it('leaves alone what was never answered', () => {
    const record = emptyRecord('natural-gas');
    expect(lapsedOf({ sheet, record, reopenedAt: secondsAfter(DAY_START, 99 * HOUR_S) })).toEqual([]);
  });

  it('opens the item again, shuts the hold point, and is satisfied by a new answer however long the day', () => {
    const reopenedAt = secondsAfter(DAY_START, 12 * HOUR_S);
    const input = { sheet, steps: 'startup', findings: [], reopenedAt, now: reopenedAt } as const;
    const reopened = runProgress({ ...input, record: full });
    expect(reopened.steps[0]?.items[0]).toMatchObject({
      state: 'open',
      because: [{ code: 'lapsed', lapse: 'roomCo', hours: 8, lastAt: DAY_START }],
      blocks: ['firing'],
    });
    expect(reopened.steps[1]?.state).toBe('locked');
    const again = withReading(full, reading('room-co', 'roomCoPpm', 1, secondsAfter(reopenedAt, 60)));
    const much = runProgress({ ...input, record: again, now: secondsAfter(reopenedAt, 20 * HOUR_S) });
    expect(much.gates.firing).toEqual([]);
  });

  it('the general sheet asks again for tightness, joints, room CO and pressures the next day but one', () => {
    const general = readShippedSheet('general-practice-natural-gas.json');
    const at = DAY_START;
    const record = [
      reading('room-co', 'roomCoPpm', 0, at),
      reading('tightness-drop', 'tightnessDropMbar', 0, at),
      reading('cold-pressure', 'systemPressureBarG', 1.2, at),
    ].reduce(withReading, withAnswer(emptyRecord('natural-gas'), 'tightness-result', 'tight', at));
    const lapsed = lapsedOf({ sheet: general, record, reopenedAt: secondsAfter(at, 48 * HOUR_S) });
    expect(lapsed.map((one) => `${one.lapse}: ${one.itemKey}`)).toEqual([
      'roomCo: room-co',
      'tightness: tightness-drop',
      'tightness: tightness-result',
      'pressure: cold-pressure',
    ]);
  });
});
