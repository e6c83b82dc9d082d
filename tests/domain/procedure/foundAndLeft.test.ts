/** A pressure found too low at a service and filled up: two readings, and the hold before firing looks at the one as left. */
import { describe, expect, it } from 'vitest';
import { judgeRun } from '../../../domain/judgement/judgeRun.ts';
import { crossCheckSheet } from '../../../domain/procedure/crossCheckSheet.ts';
import { runProgress } from '../../../domain/procedure/progress.ts';
import type { RunRecord } from '../../../domain/procedure/runRecord.ts';
import {
  DAY_START,
  emptyRecord,
  reading,
  secondsAfter,
  withAnswer,
  withReading,
} from '../../support/runRecordBuilder.ts';
import { readShippedSheets } from '../../support/shippedSheets.ts';
import { anItem, aStep, tinySheet } from '../../support/tinySheet.ts';

const sheet = tinySheet([
  aStep('before', [
    anItem('read', 'found', { quantity: 'systemPressureBarG', point: 'cold', blocks: ['firing'] }),
    anItem('read', 'left', {
      quantity: 'systemPressureBarG',
      point: 'cold',
      blocks: ['firing'],
      mayBeNotPossible: false,
      onlyFor: { foundOutside: 'found' },
    }),
  ]),
  aStep('fire', [anItem('confirm', 'lit')], { needsClear: 'firing' }),
]);
const withLimit = {
  ...sheet,
  limits: [
    {
      quantity: 'systemPressureBarG' as const,
      point: 'cold',
      fuel: null,
      min: 1,
      max: 1.8,
      severity: 'outside' as const,
      blocks: ['firing' as const, 'leaving' as const],
      basis: { kind: 'common-practice' as const, source: 'cold fill 1.0–1.5 bar' },
    },
  ],
};
const blank = emptyRecord('natural-gas');
const pressure = (itemKey: string, bar: number, afterS: number) =>
  reading(itemKey, 'systemPressureBarG', bar, secondsAfter(DAY_START, afterS), { point: 'cold' });
const progressOf = (record: RunRecord) =>
  runProgress({
    sheet: withLimit,
    steps: 'startup',
    record,
    findings: judgeRun({ record, sheet: withLimit }),
    now: secondsAfter(DAY_START, 3600),
  });
const statesOf = (record: RunRecord) =>
  Object.fromEntries((progressOf(record).steps[0]?.items ?? []).map(({ itemKey, state }) => [itemKey, state]));
const firing = (record: RunRecord) => progressOf(record).gates.firing.map(({ itemKey }) => itemKey);

describe('a pressure as found', () => {
  const low = withReading(blank, pressure('found', 0.6, 10));

  it('is asked once while it is right, and how it is left waits until it is known', () => {
    expect(statesOf(blank)).toEqual({ found: 'open', left: 'waiting' });
    const right = withReading(blank, pressure('found', 1.3, 10));
    expect(statesOf(right)).toEqual({ found: 'answered' });
    expect(firing(right)).toEqual([]);
  });

  it('keeps the burner off while it is too low, and asks how it is left', () => {
    expect(statesOf(low)).toEqual({ found: 'blocked-by-finding', left: 'open' });
    expect(firing(low)).toEqual(['found', 'left']);
  });

  it('is history once it is left right: it stands there as it was found, and nothing waits for it', () => {
    const filled = withReading(low, pressure('left', 1.3, 900));
    expect(statesOf(filled)).toEqual({ found: 'answered', left: 'answered' });
    expect(firing(filled)).toEqual([]);
    expect(filled.readings.map(({ valueOwn, supersededById }) => [valueOwn, supersededById])).toEqual([
      [0.6, null],
      [1.3, null],
    ]);
  });

  it('keeps the burner off while it is left too low as well, and when it is found low once more later', () => {
    expect(firing(withReading(low, pressure('left', 0.7, 900)))).toEqual(['left']);
    const filled = withReading(low, pressure('left', 1.3, 900));
    expect(firing(withReading(filled, { ...pressure('found', 0.5, 1800), sample: 2 }))).toContain('found');
  });

  it('is not asked to be put right where it was not possible to read', () => {
    expect(statesOf(withAnswer(blank, 'found', null, DAY_START, { reason: 'gauge broken' }))).toEqual({
      found: 'not-possible',
    });
  });
});

describe('a sheet that asks how something is left', () => {
  it('names an earlier reading of the same quantity at the same point', () => {
    const [step] = sheet.startup;
    const [found, left] = step?.items ?? [];
    if (step === undefined || found?.kind !== 'read' || left === undefined) throw new Error('two readings expected');
    const checked = (items: typeof step.items) => crossCheckSheet({ ...sheet, startup: [{ ...step, items }] });
    expect(checked([found, left])).toEqual([]);
    const wrong = [[left, found], [{ ...found, point: 'hot' }, left], [left]];
    for (const items of wrong)
      expect(checked(items)).toEqual([
        {
          path: expect.stringMatching(/onlyFor\.foundOutside$/),
          message: 'no earlier item "found" reads the same quantity at the same point',
        },
      ]);
  });

  it.each(readShippedSheets().map((one) => ({ one, name: one.sheetId })))(
    '$name does, at services and repairs',
    ({ one }) => {
      for (const list of [one.service, one.repair ?? []]) {
        const items = list.flatMap((each) => each.items);
        expect(items.filter(({ onlyFor }) => onlyFor?.foundOutside === 'service-cold-pressure')).toHaveLength(1);
      }
    },
  );
});
