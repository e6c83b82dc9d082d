import { describe, expect, it } from 'vitest';
import type { RunView } from '../../../../electron/contract/runs.ts';
import { takenUpAt } from '../../../../renderer/run/state/useTakenUp.ts';
import { DAY_START, emptyRecord, withAnswer } from '../../../support/runRecordBuilder.ts';
import { anItem, aStep, tinySheet } from '../../../support/tinySheet.ts';

const THREE_DAYS_ON = new Date(Date.parse(DAY_START) + 3 * 86_400_000).toISOString();
const sheet = tinySheet([aStep('all', [anItem('confirm', 'tight', { blocks: ['leaving'], lapses: 'tightness' })])]);
const record = { ...emptyRecord('natural-gas'), startedAt: DAY_START };
const viewOf = (more: object): RunView =>
  ({ record, sheet, reopenedAt: null, sealedSha256: null, visit: { outcome: null }, people: [], ...more }) as never;

describe('a run that was left, on screen', () => {
  it('is shown as taken up now where something is left to do', () => {
    expect(takenUpAt(viewOf({}), [], THREE_DAYS_ON).reopenedAt).toBe(THREE_DAYS_ON);
    expect(takenUpAt(viewOf({}), [], DAY_START).reopenedAt).toBeNull();
  });

  it('is shown as it was where all was done on the day and only the end was not pressed', () => {
    const done = withAnswer(record, 'tight', 'yes', DAY_START, { stepKey: 'all' });
    expect(takenUpAt(viewOf({ record: done }), [], THREE_DAYS_ON).reopenedAt).toBeNull();
  });

  it('is left alone once the visit has ended or the record is sealed', () => {
    expect(takenUpAt(viewOf({ visit: { outcome: 'finished' } }), [], THREE_DAYS_ON).reopenedAt).toBeNull();
    expect(takenUpAt(viewOf({ sealedSha256: 'x' }), [], THREE_DAYS_ON).reopenedAt).toBeNull();
  });
});
