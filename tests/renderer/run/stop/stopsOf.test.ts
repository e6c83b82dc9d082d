import { describe, expect, it } from 'vitest';
import { EVERYBODY_OUT } from '../../../../domain/judgement/makeSafe.ts';
import { stopsOf } from '../../../../renderer/run/stop/stopsOf.ts';
import { aFinding } from '../../../support/aFinding.ts';
import { DAY_START, emptyRecord, reading, withAnswer, withReading } from '../../../support/runRecordBuilder.ts';
import { anItem, aStep, tinySheet } from '../../../support/tinySheet.ts';

const sheet = tinySheet([
  aStep('arrival', [
    anItem('read', 'room-co', { label: 'CO in the room', quantity: 'roomCoPpm', point: 'before' }),
    anItem('choose', 'smell', {
      label: 'Smell of gas?',
      options: [
        { value: 'none', label: 'None' },
        { value: 'smell', label: 'Gas smell', outcome: 'stop' },
      ],
    }),
  ]),
]);
const roomCo = reading('room-co', 'roomCoPpm', 150, DAY_START, { stepKey: 'arrival' });
const record = withReading(emptyRecord('natural-gas'), roomCo);

describe('stopsOf', () => {
  it('lets one reading stop once, by what asks everybody out', () => {
    const findings = [
      aFinding({ verdict: 'stop', readingId: roomCo.readingId, subject: 'limit:roomCoPpm@before', makeSafe: ['wait'] }),
      aFinding({
        verdict: 'stop',
        readingId: roomCo.readingId,
        subject: 'ceiling:room-co-everybody-out@before',
        makeSafe: EVERYBODY_OUT,
        leaveFirst: true,
      }),
    ];
    const stops = stopsOf({ record, sheet }, { steps: sheet.startup, findings });
    expect(stops).toHaveLength(1);
    expect(stops[0]).toMatchObject({
      what: 'CO in the room: 150 ppm',
      leaveFirst: true,
      makeSafe: EVERYBODY_OUT,
      at: { stepKey: 'arrival', itemKey: 'room-co' },
    });
  });

  it('dates what was worked out from CO and O2 by the CO, which is read again after the O2', () => {
    const co = reading('flue', 'coPpm', 4000, '2026-03-03T14:00:00.000Z');
    const o2 = reading('flue', 'o2DryVolPct', 5, '2026-03-03T14:20:00.000Z');
    const inputs = { 'o2DryVolPct.reading': o2.readingId, 'coPpm.reading': co.readingId };
    const findings = [
      aFinding({ verdict: 'stop', readingId: null, subject: 'ceiling:x', basis: { ...aFinding().basis, inputs } }),
    ];
    const both = withReading(withReading(record, co), o2);
    expect(stopsOf({ record: both, sheet }, { steps: sheet.startup, findings })[0]?.since).toBe(co.measuredAt);
  });

  it('says beside the stop what the number may have been, had it been typed wrongly', () => {
    const flue = reading('flue', 'flueGasC', 144, '2026-03-03T14:00:00.000Z');
    const change = { readingId: flue.readingId, quantity: 'flueGasC' as const, toOwn: 62.2 };
    const findings = [
      aFinding({ verdict: 'stop', readingId: flue.readingId, subject: 'ceiling:vent-material@high' }),
      aFinding({
        verdict: 'cannot-judge',
        readingId: flue.readingId,
        subject: 'mistake:fahrenheit-in-celsius@high',
        suggestions: [{ code: 'fahrenheit-in-celsius', changes: [change], needsNewReading: true }],
      }),
    ];
    const stops = stopsOf({ record: withReading(record, flue), sheet }, { steps: sheet.startup, findings });
    expect(stops.map(({ asks }) => asks)).toEqual([['°F typed in a °C box?']]);
  });

  it('takes an answer that means stop; a smell of gas sends everybody out', () => {
    const smelled = withAnswer(record, 'smell', 'smell', DAY_START);
    expect(stopsOf({ record: smelled, sheet }, { steps: sheet.startup, findings: [] })).toMatchObject([
      { what: 'Smell of gas: Gas smell', leaveFirst: true },
    ]);
  });

  it('goes by what the sheet says of an answer, whatever its words are', () => {
    const alarm = tinySheet([
      aStep('arrival', [
        anItem('choose', 'alarm', {
          label: 'CO alarm',
          options: [
            { value: 'quiet', label: 'Quiet' },
            { value: 'sounds', label: 'Sounds', outcome: 'stop', leaveFirst: true },
          ],
        }),
      ]),
    ]);
    const heard = withAnswer(emptyRecord('natural-gas'), 'alarm', 'sounds', DAY_START);
    expect(stopsOf({ record: heard, sheet: alarm }, { steps: alarm.startup, findings: [] })).toMatchObject([
      { what: 'CO alarm: Sounds', leaveFirst: true, makeSafe: EVERYBODY_OUT },
    ]);
  });

  it('is silent otherwise', () => {
    const fine = withAnswer(record, 'smell', 'none', DAY_START);
    expect(stopsOf({ record: fine, sheet }, { steps: sheet.startup, findings: [aFinding()] })).toEqual([]);
  });
});
