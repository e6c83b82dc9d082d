/**
 * Field case F-01, "No CO in the room, so it is fine": the analyser went over its range (4000 ppm CO in the flue),
 * then read 8000 ppm after cleaning; the boiler was left running because the room showed none. Room air never offsets
 * a flue reading, and worse after the work is said.
 */
import { describe, expect, it } from 'vitest';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import { parseTyped } from '../../domain/quantity/parseTyped.ts';
import { unwrap } from '../../domain/result.ts';
import { findingOn } from '../support/findings.ts';
import { judgementSheet } from '../support/judgementSheet.ts';
import { ANALYSER, cleanRecord, reading, withoutReading, withReadings, withValue } from '../support/recordBuilder.ts';

describe('F-01: No CO in the room, so it is fine', () => {
  const typed = unwrap(parseTyped('coPpm', '>4000', 'ppm'));
  const co = (minutes: number) =>
    reading({
      quantity: 'coPpm',
      value: typed.valueOwn,
      itemKey: 'combustion-high',
      stepKey: 'combustion',
      point: 'high',
      minutes,
      instrumentId: ANALYSER.instrumentId,
    });
  const before = {
    ...co(49),
    readingId: 'before',
    comparator: typed.comparator,
    typedText: '>4000',
    supersededById: 'after',
  };
  const after = { ...co(52), readingId: 'after', valueOwn: 8000, typedText: '8000' };
  const record = withReadings(
    withValue(withoutReading(cleanRecord(), 'coPpm', 'high'), 'roomCoPpm', null, 0),
    before,
    after,
  );
  const findings = judgeRun({
    record: { ...record, instruments: record.instruments.map((one) => ({ ...one, rangeMax: { coPpm: 10_000 } })) },
    sheet: judgementSheet({ limits: [] }),
    jurisdiction: 'US',
  });

  it('keeps ">4000" as at least 4000', () => {
    expect(typed).toMatchObject({ valueOwn: 4000, comparator: '>', typedText: '>4000' });
  });

  it('stops at the flue whatever the room shows, and says how to make safe', () => {
    const flue = findingOn(findings, 'ceiling:flue-co-air-free@high');
    expect(flue).toMatchObject({ verdict: 'stop', blocks: ['firing', 'leaving', 'registration'] });
    expect(flue.makeSafe.join(' ')).toMatch(/gas valve.*Label.*Tell/s);
    expect(findingOn(findings, 'ceiling:room-co').verdict).toBe('within');
  });

  it('shows that it got worse after the work, without taking ">4000" for a measurement', () => {
    expect(findingOn(findings, 'worse:coPpm@high').basis.inputs).toMatchObject({ before: '>4000', after: 8000 });
    const numbers = findings
      .flatMap(({ basis }) => Object.values(basis.inputs))
      .filter((one) => typeof one === 'number');
    expect(numbers).not.toContain(4000);
    expect(numbers).not.toContain(6000);
  });

  it('is a stop by itself while over range', () => {
    const alone = withReadings(withoutReading(cleanRecord(), 'coPpm', 'high'), { ...before, supersededById: null });
    const finding = findingOn(judgeRun({ record: alone, sheet: judgementSheet() }), 'ceiling:flue-co-air-free@high');
    expect(finding.verdict).toBe('stop');
    expect(finding.proof).toMatchObject({ proven: false, because: expect.arrayContaining(['over-range']) });
  });
});
