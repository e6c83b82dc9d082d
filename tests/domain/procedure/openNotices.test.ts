/** An unsettled recall or stop-use notice shuts the run like an open make-safe, and no answer of the sheet talks it open. */
import { describe, expect, it } from 'vitest';
import { runProgress } from '../../../domain/procedure/progress.ts';
import type { RunRecord } from '../../../domain/procedure/runRecord.ts';
import type { OpenNotice } from '../../../domain/recalls/openNotices.ts';
import { DAY_START, emptyRecord, withAnswer } from '../../support/runRecordBuilder.ts';
import { anItem, aStep, tinySheet } from '../../support/tinySheet.ts';

const NOTICE: OpenNotice = {
  recallId: 'r1',
  title: 'Tag may say the wrong fuel',
  number: null,
  source: 'the maker',
  whatToDo: 'Do not use it.',
  mayFire: false,
  doubts: [],
  isRefused: false,
};

const SHEET = tinySheet([
  aStep('before', [
    anItem('choose', 'asked-for-notices', {
      meets: ['2.2/recalls'],
      blocks: ['firing'],
      options: [
        { value: 'none', label: 'None', outcome: 'fine' },
        { value: 'cleared', label: 'Cleared on record', outcome: 'fine' },
        { value: 'open', label: 'Open', outcome: 'stop' },
      ],
    }),
  ]),
  aStep('fire', [anItem('confirm', 'lit', { blocks: ['leaving'] })], { needsClear: 'firing' }),
]);

function progressOf(record: RunRecord) {
  return runProgress({ sheet: SHEET, steps: 'startup', record, findings: [], now: DAY_START });
}

describe('a notice in the files', () => {
  const blocker = { stepKey: null, itemKey: null, because: [{ code: 'open-notice', notice: NOTICE }] };
  const blank = emptyRecord('natural-gas');

  it.each(['none', 'cleared'])('shuts firing and leaving although the sheet was answered “%s”', (value) => {
    const answered = withAnswer(blank, 'asked-for-notices', value, DAY_START);
    expect(progressOf(answered).gates.firing).toEqual([]);
    const { gates, steps } = progressOf({ ...answered, openNotices: [NOTICE] });
    expect(gates.firing).toContainEqual(blocker);
    expect(gates.leaving).toContainEqual(blocker);
    expect(gates.registration).toContainEqual(blocker);
    expect(steps[1]?.state).toBe('locked');
    expect(steps[0]?.items[0]).toMatchObject({
      state: 'blocked-by-finding',
      because: [{ code: 'open-notice', notice: NOTICE }],
    });
  });

  it('keeps nobody from firing, and takes no answer back, where the notice only informs', () => {
    const answered = withAnswer(blank, 'asked-for-notices', 'none', DAY_START);
    const { gates, steps } = progressOf({ ...answered, openNotices: [{ ...NOTICE, mayFire: true }] });
    expect([gates.firing, gates.registration]).toEqual([[], []]);
    expect(steps[1]?.state).not.toBe('locked');
    const both = progressOf({ ...answered, openNotices: [{ ...NOTICE, recallId: 'r0', mayFire: true }, NOTICE] });
    expect(both.gates.firing).toContainEqual(blocker);
  });

  it('shuts what is behind the hold point again when it comes in after the burner was lit', () => {
    const lit = withAnswer(withAnswer(blank, 'asked-for-notices', 'none', DAY_START), 'lit', 'yes', DAY_START);
    const { gates, steps } = progressOf({ ...lit, openNotices: [NOTICE] });
    expect(gates.leaving).toContainEqual(blocker);
    expect(steps[1]).toMatchObject({ state: 'done', lockedBecause: [{ code: 'hold-point' }] });
  });
});
