/**
 * Field case F-02, "6 % CO2 and no published limit": one engineer condemned a boiler for 6 % CO2 and a failed spillage
 * test, a second one's test passed, and the maker publishes no CO2 figure for the model. No limit is no fail; two
 * results that disagree both stay and are named.
 */
import { describe, expect, it } from 'vitest';
import { SITE_FUELS } from '../../domain/combustion/fuels.ts';
import { o2FromCo2 } from '../../domain/combustion/o2Co2.ts';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import type { RecordedAnswer } from '../../domain/procedure/runRecord.ts';
import { unwrap } from '../../domain/result.ts';
import { findingOn, findingsOn } from '../support/findings.ts';
import { judgementSheet } from '../support/judgementSheet.ts';
import { at, cleanRecord, withValue } from '../support/recordBuilder.ts';

const spillage = {
  key: 'spillage',
  label: 'Spillage test',
  kind: 'choose',
  options: [
    { value: 'pass', label: 'Passed' },
    { value: 'fail', label: 'Failed', outcome: 'stop' },
  ],
};
const base = judgementSheet();
const [first, ...others] = base.startup;
const sheet = judgementSheet({
  limits: [],
  relations: [],
  startup: [{ ...first, items: [...(first?.items ?? []), spillage] }, ...others],
});
const answer = (value: string, byId: string, minutes: number, reason: string | null = null): RecordedAnswer => ({
  itemKey: 'spillage',
  stepKey: 'before-firing',
  value,
  reason,
  byId,
  at: at(minutes),
});
const lean = withValue(withValue(cleanRecord(), 'co2DryVolPct', 'high', 6), 'o2DryVolPct', 'high', 10.3);
const judge = (...answers: readonly RecordedAnswer[]) =>
  judgeRun({ record: { ...lean, answers: [...lean.answers, ...answers] }, sheet });

describe('F-02: 6 % CO2 and no published limit', () => {
  it('expects about 10.3 % O₂ beside 6 % CO₂', () => {
    const o2 = unwrap(o2FromCo2({ fuel: SITE_FUELS['natural-gas'], co2DryVolPct: 6 }));
    expect(Math.abs(o2 - 10.3)).toBeLessThanOrEqual(0.1);
  });

  it('says "no limit on the sheet" and nothing else of it', () => {
    const findings = judge();
    expect(findingOn(findings, 'limit:co2DryVolPct@high')).toMatchObject({
      verdict: 'no-limit-on-sheet',
      basis: { limit: null },
    });
    const about = findings.filter(({ basis }) =>
      Object.keys(basis.inputs).some((name) => name.startsWith('co2DryVolPct@high')),
    );
    expect(about.filter(({ verdict }) => verdict === 'outside' || verdict === 'stop')).toEqual([]);
    // The pair itself agrees.
    expect(findingsOn(findings, 'pair:o2-co2@high')).toEqual([]);
  });

  it('keeps both spillage results, and stays open until one is closed with a reason', () => {
    const disagreement = findingOn(
      judge(answer('fail', 'engineer-a', 30), answer('pass', 'engineer-b', 1470)),
      'spillage',
    );
    expect(disagreement).toMatchObject({
      verdict: 'outside',
      blocks: ['leaving'],
      basis: { inputs: { failed: 'fail', failedBy: 'engineer-a', passed: 'pass', passedBy: 'engineer-b' } },
    });
    const closed = judge(
      answer('fail', 'engineer-a', 30),
      answer('pass', 'engineer-b', 1470, 'flow and spillage repeated, both pass'),
    );
    expect(findingsOn(closed, 'spillage')).toEqual([]);
    // "Not possible, because …" is no result: the failed test stands.
    const evaded = judge(answer('fail', 'engineer-a', 30), {
      ...answer('pass', 'engineer-b', 1470),
      value: null,
      reason: 'no smoke pen',
    });
    expect(findingOn(evaded, 'spillage')).toMatchObject({ verdict: 'outside', blocks: ['leaving'] });
  });
});
