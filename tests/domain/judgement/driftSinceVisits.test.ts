/** What a service says of earlier visits, through the judgement, the procedure and a clean run of the test sheet. */
import { describe, expect, it } from 'vitest';
import { judgeRun } from '../../../domain/judgement/judgeRun.ts';
import { runProgress } from '../../../domain/procedure/progress.ts';
import type { RunRecord } from '../../../domain/procedure/runRecord.ts';
import type { PastRun } from '../../../domain/trend/pastRun.ts';
import { readingsToCompare } from '../../../domain/trend/readingsToCompare.ts';
import { findingOn } from '../../support/findings.ts';
import { judgementSheet } from '../../support/judgementSheet.ts';
import { at, cleanRecord, reading, withReadings, withValue } from '../../support/recordBuilder.ts';

const sheet = judgementSheet();
const service: RunRecord = { ...cleanRecord(), kind: 'service' };
const startup: PastRun = {
  runId: 'startup',
  visitId: 'then',
  kind: 'startup',
  on: '2024-10-07',
  fuel: 'natural-gas',
  startsBaseline: true,
  readings: readingsToCompare(cleanRecord()),
};
const judged = (record: RunRecord, past: readonly PastRun[] = [startup]) => judgeRun({ record, sheet, past });
const trendSubjects = (record: RunRecord, past?: readonly PastRun[]) =>
  judged(record, past)
    .map(({ subject }) => subject)
    .filter((subject) => /^(?:drift|symptom):/.test(subject));
const leavingBlockers = (record: RunRecord) =>
  runProgress({ sheet, steps: 'startup', record, findings: judged(record), now: at(90) }).gates.leaving.flatMap(
    ({ because }) => because.flatMap((one) => (one.code === 'finding' ? [one.finding.subject] : [])),
  );

describe('driftSinceVisits', () => {
  it('says nothing when everything is as it was, without earlier visits, and of a startup', () => {
    expect(trendSubjects(service)).toEqual([]);
    const leaner = withValue(service, 'co2DryVolPct', 'high', 8.5);
    expect(trendSubjects(leaner, [])).toEqual([]);
    expect(trendSubjects({ ...leaner, kind: 'startup' })).toEqual([]);
  });

  it('tells in plain words what a leaner mixture may mean, and blocks nothing', () => {
    const finding = findingOn(judged(withValue(service, 'co2DryVolPct', 'high', 8.5)), 'symptom:leaner@high');
    expect(finding).toMatchObject({ verdict: 'outside', blocks: [] });
    expect(finding.basis.source?.source).toMatch(/^may mean air leak, gas valve drift, .*; check: tune the combustion/);
    expect(finding.basis.formula).toBe('now against the startup of 2024-10-07');
    expect(finding.basis.inputs).toMatchObject({ 'CO₂@high, then': 9.1, 'CO₂@high, now': 8.5 });
  });

  it('tells a drift that no symptom explains', () => {
    expect(trendSubjects(withValue(service, 'inletPressureMbarG', 'dynamic', 17.5))).toEqual([
      'drift:dynamic-inlet-pressure',
    ]);
  });

  it('does not compare temperatures at another return, and says what it takes', () => {
    const warmer = withValue(withValue(service, 'returnC', 'high', 55), 'flueGasC', 'high', 75);
    expect(trendSubjects(warmer)).toEqual(['drift:temperatures@high']);
    expect(findingOn(judged(warmer), 'drift:temperatures@high').missing).toEqual([
      'a return within 3 K of the earlier one',
    ]);
  });

  it('keeps the visit open while CO and CO₂ are both up, until both are read again as they should be', () => {
    const rich = withValue(withValue(service, 'co2DryVolPct', 'high', 9.7), 'coPpm', 'high', 130);
    expect(trendSubjects(rich)).toEqual(['symptom:too-rich@high']);
    expect(leavingBlockers(rich)).toContain('symptom:too-rich@high');

    const again = [1, 2].flatMap((sample) =>
      (
        [
          ['o2DryVolPct', 4.9],
          ['co2DryVolPct', 9.1],
          ['coPpm', 60],
          ['flueGasC', 58.4],
        ] as const
      ).map(([quantity, value]) =>
        reading({
          quantity,
          value,
          itemKey: 'combustion-high',
          stepKey: 'combustion',
          point: 'high',
          sample: sample + 2,
          minutes: 80 + sample * 1.5,
          instrumentId: 'analyser-1',
          readingId: `again ${quantity} ${sample}`,
        }),
      ),
    );
    expect(leavingBlockers(withReadings(rich, ...again))).not.toContain('symptom:too-rich@high');
  });
});
