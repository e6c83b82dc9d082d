/**
 * Field case F-09, "perfect at noon, dead at dawn": a propane boiler locked out most mornings in deep cold and was
 * perfect when visited: a small tank, a third full, cannot boil off fast enough for everything on it. One good reading
 * closes nothing.
 */
import { describe, expect, it } from 'vitest';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import { runProgress } from '../../domain/procedure/progress.ts';
import type { RecordedLockout, RunRecord } from '../../domain/procedure/runRecord.ts';
import { parseTyped } from '../../domain/quantity/parseTyped.ts';
import { unwrap } from '../../domain/result.ts';
import { driveRun } from '../support/driveRun.ts';
import { findingOn, findingsOn } from '../support/findings.ts';
import { judgementSheet } from '../support/judgementSheet.ts';
import { HEALTHY_INSTRUMENT, plausibleEntry } from '../support/plausibleEntry.ts';
import { cleanRecord, MANOMETER, reading, withReadings, withValue } from '../support/recordBuilder.ts';
import { DAY_START, emptyRecord, TECHNICIAN_ID, withAnswer } from '../support/runRecordBuilder.ts';
import { readShippedSheets } from '../support/shippedSheets.ts';

const elevenInches = unwrap(parseTyped('inletPressureMbarG', '11 "wc', 'in w.c.')).valueOwn;
const base = judgementSheet();
const combustion = base.startup[2];
const sheet = judgementSheet({
  limits: [
    {
      quantity: 'inletPressureMbarG',
      fuel: 'propane',
      min: unwrap(parseTyped('inletPressureMbarG', '8', 'in w.c.')).valueOwn,
      max: unwrap(parseTyped('inletPressureMbarG', '14', 'in w.c.')).valueOwn,
      basis: { kind: 'maker', source: '8–14 in. w.c.' },
    },
  ],
  relations: [],
  startup: [
    base.startup[0],
    base.startup[1],
    {
      ...combustion,
      items: [
        ...(combustion?.items ?? []),
        {
          key: 'all-on',
          label: 'All appliances on',
          kind: 'read',
          quantity: 'inletPressureMbarG',
          point: 'dynamic-all-on',
        },
      ],
    },
    base.startup[3],
  ],
});
const boilerOnly = withValue(
  withValue({ ...cleanRecord(), fuel: 'propane' }, 'inletPressureMbarG', 'static', elevenInches),
  'inletPressureMbarG',
  'dynamic',
  elevenInches,
);

describe('F-09: perfect at noon, dead at dawn', () => {
  it('finds static and dynamic inside the sheet, and still misses the pressure with everything running', () => {
    const findings = judgeRun({ record: boilerOnly, sheet });
    expect(findingOn(findings, 'limit:inletPressureMbarG@static').verdict).toBe('within');
    expect(findingOn(findings, 'limit:inletPressureMbarG@dynamic').verdict).toBe('within');
    expect(findingOn(findings, 'computed:inlet-all-on')).toMatchObject({
      verdict: 'cannot-judge',
      blocks: ['leaving'],
      missing: ['inlet pressure with all appliances on'],
    });
  });

  it('is satisfied only by that reading', () => {
    const allOn = reading({
      quantity: 'inletPressureMbarG',
      value: elevenInches * 0.7,
      itemKey: 'all-on',
      stepKey: 'combustion',
      point: 'dynamic-all-on',
      minutes: 54,
      instrumentId: MANOMETER.instrumentId,
    });
    const findings = judgeRun({ record: withReadings(boilerOnly, allOn), sheet });
    expect(findingsOn(findings, 'computed:inlet-all-on')).toEqual([]);
    expect(findingOn(findings, 'limit:inletPressureMbarG@dynamic-all-on').verdict).toBe('outside');
  });
});

describe('F-09: perfect at noon, dead at dawn, the repair', () => {
  const general = readShippedSheets().find((one) => one.sheetId === 'general-practice-propane');
  if (general === undefined) throw new Error('no general sheet for propane');
  const lockout = (day: string, time: string, fahrenheit: string): RecordedLockout => ({
    rowId: day,
    itemKey: 'lockout-list',
    happenedAt: `${day}T${time}:00.000Z`,
    code: null,
    outdoorTypedText: fahrenheit,
    outdoorTypedUnit: '°F',
    outdoorC: unwrap(parseTyped('outdoorC', fahrenheit, '°F')).valueOwn,
    byId: TECHNICIAN_ID,
    at: DAY_START,
  });
  // 07:20, 07:35 and 07:30 at the site, which is five hours behind.
  const lockouts = [
    lockout('2026-01-08', '12:20', '-3'),
    lockout('2026-01-09', '12:35', '-5'),
    lockout('2026-01-10', '12:30', '-2'),
  ];
  const start = emptyRecord('propane', { kind: 'repair', lockouts });
  const site = { ...start.site, timeZone: 'America/New_York', gasSupplyKind: 'tank' as const };
  const record = { ...start, site };

  it('lays the lockouts against the cold and names the supply first', () => {
    const finding = findingOn(judgeRun({ record, sheet: general }), 'lockout-list');
    expect(finding.basis.formula).toBe(
      '3 lockouts from 2026-01-08 07:20 to 2026-01-10 07:30, between 07:20 and 07:35, at −21 °C to −19 °C outside',
    );
    expect(finding.basis.source?.source).toMatch(/gas supply first \(size and level of the tank/);
    expect(finding.missing).toEqual(['dynamic inlet pressure with every gas appliance on']);
  });

  it('says nothing of lockouts at any hour, or in the warm', () => {
    const spread = [...lockouts.slice(0, 2), lockout('2026-01-10', '20:30', '-2')];
    const warm = lockouts.map((one) => ({ ...one, outdoorC: 12 }));
    for (const other of [spread, warm, lockouts.slice(0, 1)]) {
      const findings = judgeRun({ record: { ...record, lockouts: other }, sheet: general });
      expect(findingsOn(findings, 'lockout-list')).toEqual([]);
    }
  });

  it('stays open with every reading inside: it may end as one to come back to, never as finished', () => {
    const judge = (run: RunRecord) => judgeRun({ record: run, sheet: general });
    const style = {
      instrumentId: HEALTHY_INSTRUMENT.instrumentId,
      entryFor: plausibleEntry(general, 'propane', 24),
    };
    const walked = driveRun(general, 'repair', { ...record, instruments: [HEALTHY_INSTRUMENT] }, undefined, {
      judge,
      style,
    });
    expect(walked.progress.gates.leaving).toEqual([]);
    const notFound = withAnswer(walked.record, 'fault-cause', 'not-found', walked.now);
    const { gates } = runProgress({
      sheet: general,
      steps: 'repair',
      record: withAnswer(notFound, 'fault-next', 'supplier checks the tank', walked.now),
      findings: judge(notFound),
      now: walked.now,
    });
    expect(gates.leaving.map(({ because }) => because)).toEqual([[{ code: 'fault-open', option: 'not-found' }]]);
  });
});
