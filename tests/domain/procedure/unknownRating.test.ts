import { describe, expect, it } from 'vitest';
import { plateRatingKw } from '../../../domain/procedure/plateRating.ts';
import { runProgress } from '../../../domain/procedure/progress.ts';
import type { ProgressPerson } from '../../../domain/procedure/progressTypes.ts';
import type { RunRecord } from '../../../domain/procedure/runRecord.ts';
import {
  DAY_START,
  emptyRecord,
  reading,
  secondsAfter,
  TECHNICIAN_ID,
  withAnswer,
  withReading,
} from '../../support/runRecordBuilder.ts';
import { anItem, aStep, tinySheet } from '../../support/tinySheet.ts';

const known = emptyRecord('natural-gas');
const blank: RunRecord = { ...known, appliance: { ...known.appliance, ratedInputKw: null } };
const sheet = tinySheet([
  aStep('before', [anItem('confirm', 'tight', { blocks: ['firing'] })]),
  aStep('fire', [anItem('confirm', 'lit')], { needsClear: 'firing' }),
]);
const limited: ProgressPerson = {
  staffId: TECHNICIAN_ID,
  name: 'Up To Seventy',
  isLicensed: true,
  waitsForRating: true,
};
const unlimited: ProgressPerson = { staffId: 'other', name: 'Every Size', isLicensed: true, waitsForRating: false };
const helper: ProgressPerson = { staffId: 'helper', name: 'Young One', isLicensed: false, waitsForRating: false };
const answeredBy = (record: RunRecord, ...staffIds: readonly string[]): RunRecord => ({
  ...record,
  answers: staffIds.map((byId, index) => ({
    itemKey: 'tight',
    stepKey: 'before',
    value: 'yes',
    reason: null,
    byId,
    at: secondsAfter(DAY_START, index),
  })),
});
const firing = (record: RunRecord, people: readonly ProgressPerson[], reopenedAt: string | null = null) =>
  runProgress({ sheet, steps: 'startup', record, findings: [], people, reopenedAt, now: DAY_START }).gates.firing;

describe('firing, when nobody knows the rating on the plate', () => {
  it('waits while everybody licensed at work has a licence with an upper limit', () => {
    const shut = firing(answeredBy(blank, limited.staffId), [limited, unlimited]);
    expect(shut).toEqual([
      { stepKey: null, itemKey: null, because: [{ code: 'rating-unknown', names: ['Up To Seventy'] }] },
    ]);
  });

  it('does not wait where somebody works whose licence has none; to be on the staff is not enough, nor to be a helper', () => {
    expect(firing(answeredBy(blank, limited.staffId, unlimited.staffId), [limited, unlimited])).toEqual([]);
    expect(firing(answeredBy(blank, limited.staffId, helper.staffId), [limited, helper])).toHaveLength(1);
  });

  it('waits again in a run that is taken up by the one with the limit alone', () => {
    const record = answeredBy(blank, unlimited.staffId, limited.staffId);
    expect(firing(record, [limited, unlimited])).toEqual([]);
    expect(firing(record, [limited, unlimited], secondsAfter(DAY_START, 1))).toHaveLength(1);
  });

  it('says nothing where nobody’s licence waits for it', () => {
    expect(firing(withAnswer(blank, 'tight', 'yes', DAY_START), [{ ...limited, waitsForRating: false }])).toEqual([]);
  });
});

describe('the rating of the plate', () => {
  it('is that of the file, else as it was read in the run, and never one that was replaced', () => {
    expect(plateRatingKw(known)).toBe(known.appliance.ratedInputKw);
    expect(plateRatingKw(blank)).toBeNull();
    const read = reading('plate', 'ratedInputKw', 80, DAY_START);
    expect(plateRatingKw(withReading(blank, read))).toBe(80);
    expect(plateRatingKw(withReading(blank, { ...read, supersededById: 'another' }))).toBeNull();
  });
});
