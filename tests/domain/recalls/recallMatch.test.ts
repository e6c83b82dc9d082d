/** Hand-worked rows: no published rule for serial ranges of notices is known, so each says why (common practice, no source). */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type RecallRule, type RecallSubject, recallMatch } from '../../../domain/recalls/recallMatch.ts';
import { checkSerialRange, serialInRange } from '../../../domain/recalls/serialRange.ts';

const RANGE = { from: 'QC-001000', to: 'QC-001999' };

describe('a serial against a range, both ends included', () => {
  it.each([
    ['QC-001000', 'inside', 'the first one belongs to it'],
    ['QC-001999', 'inside', 'the last one belongs to it'],
    ['QC-000999', 'outside', 'one before'],
    ['QC-002000', 'outside', 'one after'],
    ['qc 1500', 'inside', 'numbers are compared, not texts: leading noughts, spaces, hyphens and case do not count'],
    ['QD-001500', 'outside', 'D is read for a nought, and C is not'],
    ['QX-001500', 'outside', 'another series'],
    ['QC-001500A', 'outside', 'another series: a letter behind'],
    ['QC-OO15OO', 'look-alike', 'letters O where noughts may stand on the plate'],
    ['0C-001500', 'look-alike', 'a nought where the series has a Q: one of the two is a slip'],
    ['QC', 'no-number', 'nothing to compare'],
    ['QC-00100000000000000000001', 'outside', 'more digits than a double holds exactly'],
  ] as const)('%s is %s: %s', (serial, expected, _why) => {
    expect(serialInRange(serial, RANGE)).toBe(expected);
  });

  it.each([
    ['AB5100233', 'inside', 'ends of digits alone hold any letters around'],
    ['5100233', 'inside', 'and none'],
    ['AB51OO233', 'look-alike', 'two letters O among the digits'],
    ['AB6100233', 'outside', 'above'],
  ] as const)('%s is %s in 5100000 to 5100999: %s', (serial, expected, _why) => {
    expect(serialInRange(serial, { from: '5100000', to: '5100999' })).toBe(expected);
  });

  it.each([
    [{ from: 'AB', to: 'AB200' }, 'no-number'],
    [{ from: 'A100', to: 'B200' }, 'not-comparable'],
    [{ from: 'A100', to: 'A200X' }, 'not-comparable'],
    [{ from: 'A200', to: 'A100' }, 'reversed'],
  ])('refuses the range %j', (range, code) => {
    expect(checkSerialRange(range)).toEqual({ ok: false, error: { code } });
  });

  it('takes exactly the numbers between, however they are padded', () => {
    const number = fc.bigInt({ min: 0n, max: 10n ** 20n });
    fc.assert(
      fc.property(number, number, number, fc.nat(6), (a, b, own, padding) => {
        const [from, to] = a < b ? [a, b] : [b, a];
        const serial = `QX${'0'.repeat(padding)}${own}`;
        const expected = own >= from && own <= to ? 'inside' : 'outside';
        expect(serialInRange(serial, { from: `QX${from}`, to: `QX${to}` })).toBe(expected);
      }),
    );
  });
});

const RULE: RecallRule = {
  maker: 'Quillstone',
  models: ['Cinder C 24', 'Cinder C 30'],
  serialRanges: [RANGE, { from: 'QC-003000', to: 'QC-003000' }],
  altitudeMinM: 600,
  altitudeMaxM: null,
};
const APPLIANCE: RecallSubject = { maker: 'Quillstone', model: 'Cinder C 24', serial: 'QC-001200', altitudeM: 900 };

describe('a notice against an appliance', () => {
  it.each([
    [{}, [], 'everything fits'],
    [{ maker: 'QUILLSTONE ' }, [], 'the maker typed otherwise'],
    [{ model: 'cinder-c 24' }, [], 'the model typed otherwise'],
    [{ serial: 'QC-003000' }, [], 'a range of one'],
    [{ altitudeM: 600 }, [], 'the altitude itself belongs to it'],
    [{ serial: '' }, ['serial-missing'], 'nobody read the plate'],
    [{ serial: 'unknown' }, ['serial-without-number'], 'a word in place of a serial'],
    [{ serial: 'QC-OO12OO' }, ['serial-look-alike'], 'the plate has to be looked at'],
    [{ altitudeM: null }, ['altitude-missing'], 'the site has no altitude'],
    [{ serial: '', altitudeM: null }, ['serial-missing', 'altitude-missing'], 'both'],
  ] as const)('is about %j with the doubts %j: %s', (own, doubts, _why) => {
    expect(recallMatch(RULE, { ...APPLIANCE, ...own })).toEqual({ doubts });
  });

  it.each([
    [{ maker: 'Tarnhollow' }, 'another maker'],
    [{ model: 'Cinder C 40' }, 'another model'],
    [{ serial: 'QC-002500' }, 'between the ranges'],
    [{ altitudeM: 599.9 }, 'below the altitude'],
    [{ serial: '', altitudeM: 10 }, 'what is known rules it out already'],
  ] as const)('is not about %j: %s', (own, _why) => {
    expect(recallMatch(RULE, { ...APPLIANCE, ...own })).toBeNull();
  });

  it('is about every model and serial where the notice names none', () => {
    const everything = { ...RULE, models: [], serialRanges: [], altitudeMinM: null };
    expect(recallMatch(everything, { ...APPLIANCE, model: 'X', serial: '', altitudeM: null })).toEqual({ doubts: [] });
  });
});
