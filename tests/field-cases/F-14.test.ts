/**
 * Field case F-14, "a fifteen-thousand zone on a thirty-thousand minimum": a boiler of 150 MBH that turns down 5 : 1
 * on a zone of 25 ft of baseboard: 30 000 Btu/h at least against 15 250. It cycles, and high fire cannot be held for
 * the combustion test.
 */
import { describe, expect, it } from 'vitest';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import { zoneVersusMinimumFire } from '../../domain/judgement/site/zoneVersusMinimumFire.ts';
import { unwrap } from '../../domain/result.ts';
import { findingOn, findingsOn } from '../support/findings.ts';
import { judgementSheet } from '../support/judgementSheet.ts';
import { cleanRecord } from '../support/recordBuilder.ts';

const KW_PER_BTU_H = 0.29307107e-3;

describe('F-14: a fifteen-thousand zone on a thirty-thousand minimum', () => {
  const zone = unwrap(
    zoneVersusMinimumFire({ maxInputKw: 150_000 * KW_PER_BTU_H, turndown: 5, openZonesKw: [25 * 610 * KW_PER_BTU_H] }),
  );

  it('makes 30,000 Btu/h at least for a zone of 15,250: it will cycle', () => {
    expect(zone.lowestFireKw / KW_PER_BTU_H).toBeCloseTo(30_000, 3);
    expect(zone.willCycle).toBe(true);
  });

  it('can’t hold high fire on it either', () => {
    expect(zone.holdsHighFire).toBe(false);
    const open = unwrap(zoneVersusMinimumFire({ maxInputKw: 44, turndown: 5, openZonesKw: [30, 20] }));
    expect(open).toMatchObject({ willCycle: false, holdsHighFire: true });
  });

  const sheet = judgementSheet();
  const withMinimum = {
    ...sheet,
    appliance: { ...sheet.appliance, ratedInputMinKw: 30_000 * KW_PER_BTU_H, ratedInputMaxKw: 150_000 * KW_PER_BTU_H },
  };
  const judge = (...zones: readonly { readonly zone: string | null; readonly ratedKw: number | null }[]) => {
    const record = cleanRecord();
    const appliance = { ...record.appliance, ratedInputKw: 150_000 * KW_PER_BTU_H };
    return judgeRun({ record: { ...record, appliance, site: { ...record.site, zones } }, sheet: withMinimum });
  };

  it('is said of the smallest zone, and stands in nobody’s way', () => {
    const findings = judge({ zone: 'north', ratedKw: 25 * 610 * KW_PER_BTU_H }, { zone: 'rest', ratedKw: 40 });
    expect(findingOn(findings, 'computed:smallest-zone@high')).toMatchObject({
      verdict: 'outside',
      blocks: [],
      basis: { inputs: { zone: 'north', willCycle: 'yes', holdsHighFire: 'no' } },
    });
  });

  it('is not said where a zone takes the lowest fire, nor of a zone whose output nobody knows', () => {
    const quiet = [
      judge({ zone: 'north', ratedKw: 5 }, { zone: 'north', ratedKw: 5 }),
      judge({ zone: 'north', ratedKw: 4 }, { zone: 'north', ratedKw: null }, { zone: 'rest', ratedKw: 40 }),
      judge(),
    ];
    for (const findings of quiet) expect(findingsOn(findings, 'computed:smallest-zone@high')).toEqual([]);
  });
});
