/** Field case F-09: perfect at noon, dead at dawn. One good reading closes nothing. */
import { describe, expect, it } from 'vitest';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import { parseTyped } from '../../domain/quantity/parseTyped.ts';
import { unwrap } from '../../domain/result.ts';
import { findingOn, findingsOn } from '../support/findings.ts';
import { judgementSheet } from '../support/judgementSheet.ts';
import { cleanRecord, MANOMETER, reading, withReadings, withValue } from '../support/recordBuilder.ts';

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

describe('F-09', () => {
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
