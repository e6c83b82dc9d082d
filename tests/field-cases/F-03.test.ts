/**
 * Field case F-03, "the joint at the boiler outlet": the vent was pushed together at the boiler without its clamp;
 * months later a hard ignition pushed it apart and the flue emptied into the basement. Here what the judgement says of
 * it; the holds are the procedure's.
 */
import { describe, expect, it } from 'vitest';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import { findingOn } from '../support/findings.ts';
import { judgementSheet } from '../support/judgementSheet.ts';
import { cleanRecord, reading, withReadings } from '../support/recordBuilder.ts';

const sheet = judgementSheet({
  limits: [
    { quantity: 'cleanStarts', min: 5, blocks: ['leaving'], basis: { kind: 'maker', source: 'five clean starts' } },
  ],
});
const starts = (value: number) =>
  judgeRun({
    record: withReadings(
      cleanRecord(),
      reading({ quantity: 'cleanStarts', value, itemKey: 'clean-starts', stepKey: 'first-fire', minutes: 44 }),
    ),
    sheet,
  });

describe('F-03: the joint at the boiler outlet', () => {
  it('keeps the visit open until the maker’s number of clean starts in a row is logged', () => {
    expect(findingOn(starts(1), 'limit:cleanStarts')).toMatchObject({ verdict: 'outside', blocks: ['leaving'] });
    expect(findingOn(starts(5), 'limit:cleanStarts').verdict).toBe('within');
  });
});
