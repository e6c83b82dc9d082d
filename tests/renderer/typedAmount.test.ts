import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readAmount, showAmount, usualUnit } from '../../renderer/form/typedAmount.ts';

describe('readAmount', () => {
  it('should take a comma for a point', () => {
    expect(readAmount('power', { text: '24,5', unit: 'kW' })).toEqual({ ok: true, value: 24.5 });
  });

  it('should let a unit typed behind the number win over the chosen one', () => {
    // 1 ft is 0.3048 m by definition (international foot, 1959).
    expect(readAmount('length', { text: '1600 ft', unit: 'm' })).toEqual({ ok: true, value: 487.68 });
  });

  it('should call nothing typed nothing known, never zero', () => {
    expect(readAmount('volume', { text: '  ', unit: 'L' })).toEqual({ ok: true, value: null });
    expect(readAmount('volume', { text: '0', unit: 'L' })).toEqual({ ok: true, value: 0 });
  });

  it.each([
    ['about 20', 'not-a-number'],
    ['>20', 'not-a-number'],
    ['20 bananas', 'unknown-unit'],
    ['1,234', 'ambiguous'],
  ])('should refuse %j as %s', (text, code) => {
    expect(readAmount('power', { text, unit: 'kW' })).toMatchObject({ ok: false, error: { code } });
  });

  it('should give back exactly what is on file while nobody types, in any unit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 9000, noNaN: true }),
        fc.constantFrom('kW', 'Btu/h', 'MBH'),
        (own, unit) => {
          expect(readAmount('power', showAmount('power', own, unit, 1))).toEqual({ ok: true, value: own });
        },
      ),
    );
  });

  it('should show a value without trailing zeros and without marks a reader would refuse', () => {
    expect(showAmount('power', 43.96, 'Btu/h', 2).text).toBe('149998');
    expect(showAmount('length', 120, 'm', 1).text).toBe('120');
    expect(showAmount('length', null, 'ft', 1)).toEqual({ text: '', unit: 'ft' });
  });

  it('should start US forms with the units of US plates', () => {
    expect(usualUnit('power', 'us')).toBe('MBH');
    expect(usualUnit('power', 'metric')).toBe('kW');
  });
});
