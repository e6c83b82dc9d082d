/**
 * Field case F-05, "three misses in one new boiler": days after startup there was no hot water: the pressure had
 * dropped unread and the schedule stood at "never". Later came a fault reset by the occupant, three bangs and a loose
 * elbow. Here: the pressure that was never read again.
 */
import { describe, expect, it } from 'vitest';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import { findingOn, findingsOn, reasonsOf } from '../support/findings.ts';
import { judgementSheet } from '../support/judgementSheet.ts';
import { at, cleanRecord, reading, withoutReading, withReadings } from '../support/recordBuilder.ts';

const maker = { kind: 'maker', source: 'rise of pressure' };
const sheet = judgementSheet({
  relations: [
    { quantity: 'systemPressureBarG', at: 'hot', to: 'cold', minDifference: 0, maxDifference: 0.8, basis: maker },
  ],
});

describe('F-05: three misses in one new boiler', () => {
  it('can’t judge the rise while the pressure was not read again after heat-up', () => {
    const findings = judgeRun({ record: withoutReading(cleanRecord(), 'systemPressureBarG', 'hot'), sheet });
    expect(findingOn(findings, 'relation:systemPressureBarG@hot-cold')).toMatchObject({
      verdict: 'cannot-judge',
      missing: ['System pressure (hot)'],
    });
    expect(findingsOn(findings, 'ceiling:relief-headroom@hot')).toEqual([]);
  });

  it('judges it when it was', () => {
    expect(findingOn(judgeRun({ record: cleanRecord(), sheet }), 'relation:systemPressureBarG@hot-cold').verdict).toBe(
      'within',
    );
  });

  it('asks for pressure and room CO again when somebody comes back days later', () => {
    const findings = judgeRun({ record: cleanRecord(), sheet, reopenedAt: at(4 * 24 * 60) });
    expect(reasonsOf(findingOn(findings, 'limit:systemPressureBarG@cold'))).toEqual(['hold-lapsed']);
    expect(reasonsOf(findingOn(findings, 'ceiling:room-co'))).toEqual(['hold-lapsed']);
  });

  it('wants a photo of every vent joint: one at the boiler and one at each elbow at least', () => {
    const judge = (photos: number, ventElbows: number | null) => {
      const record = withReadings(
        cleanRecord(),
        reading({
          quantity: 'ventPhotos',
          value: photos,
          itemKey: 'vent-photos',
          stepKey: 'before-firing',
          minutes: 9,
        }),
      );
      const appliance = { ...record.appliance, ventElbows };
      return judgeRun({ record: { ...record, appliance }, sheet });
    };
    expect(findingOn(judge(1, 3), 'computed:joints-photographed')).toMatchObject({
      verdict: 'outside',
      blocks: ['leaving'],
    });
    expect(findingOn(judge(4, 3), 'computed:joints-photographed').verdict).toBe('within');
    expect(findingsOn(judge(1, null), 'computed:joints-photographed')).toEqual([]);
  });
});
