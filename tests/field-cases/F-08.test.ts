/**
 * Field case F-08, "three derates for one site": a boiler of 100 MBH at 9000 ft: three sources take off 4 %, 2 % and 4
 * % above 2000 ft only, and a salesman nothing. The model's sheet decides; without a rule nothing is judged.
 */
import { describe, expect, it } from 'vitest';
import { siteRatingKw } from '../../domain/gas/altitudeRule.ts';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import { feetAsMetres } from '../../domain/judgement/mistakes/feetAsMetres.ts';
import { parseTyped } from '../../domain/quantity/parseTyped.ts';
import { unwrap } from '../../domain/result.ts';
import { findingOn } from '../support/findings.ts';
import { judgementSheet } from '../support/judgementSheet.ts';
import { cleanRecord } from '../support/recordBuilder.ts';

const basis = { kind: 'maker', source: 'altitude table' };
const ratedInputKw = unwrap(parseTyped('ratedInputKw', '100 MBH', 'kW')).valueOwn;
const altitudeM = unwrap(parseTyped('altitudeM', '9000', 'ft')).valueOwn;
const record = {
  ...cleanRecord(),
  site: { ...cleanRecord().site, altitudeM },
  appliance: { ...cleanRecord().appliance, ratedInputKw },
};
const twoPct = judgementSheet({
  altitude: { method: 'per-1000-ft', pct: 2, fromFt: 0, countedFrom: 'sea-level', basis },
});

describe('F-08: three derates for one site', () => {
  it('rates the site at 82 MBH, with the rule beside it', () => {
    const { inputs } = findingOn(judgeRun({ record, sheet: twoPct }), 'computed:clocked-input').basis;
    expect((Number(inputs['siteRatingKw']) / ratedInputKw) * 100).toBeCloseTo(82, 6);
    expect(inputs['altitudeRule']).toBe('2 % per 1000 ft above 0 ft, counted from sea level');
  });

  it('does not judge against the plate when the sheet has no rule', () => {
    const silent = judgementSheet({ altitude: { method: 'not-on-sheet' } });
    expect(findingOn(judgeRun({ record, sheet: silent }), 'computed:clocked-input')).toMatchObject({
      verdict: 'cannot-judge',
      missing: [expect.stringMatching(/none is on the sheet; ask the maker/)],
      basis: { inputs: { altitudeRule: 'not on the sheet' } },
    });
  });

  it('shows what metres typed as feet would do, and catches it by the neighbours', () => {
    const slipM = unwrap(parseTyped('altitudeM', '2743', 'ft')).valueOwn;
    const rule = { method: 'per-1000-ft', pct: 2, fromFt: 0, countedFrom: 'sea-level' } as const;
    expect((unwrap(siteRatingKw({ ratedInputKw, rule, elevationM: slipM })) / ratedInputKw) * 100).toBeCloseTo(94.5, 1);
    expect(feetAsMetres({ altitudeM: slipM, neighbourAltitudesM: [2690, 2810] })).toMatchObject({
      code: 'feet-as-metres',
      meant: 'metres',
      meantM: expect.closeTo(2743, 6),
    });
  });
});
