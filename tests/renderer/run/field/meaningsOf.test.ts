import { describe, expect, it } from 'vitest';
import { parseTyped } from '../../../../domain/quantity/parseTyped.ts';
import type { QuantityKey } from '../../../../domain/quantity/quantities.ts';
import { meaningsOf } from '../../../../renderer/run/field/meaningsOf.ts';
import { meaningText } from '../../../../renderer/run/field/meaningText.ts';

function offered(quantity: QuantityKey, text: string, unit: string): readonly string[] {
  const read = parseTyped(quantity, text, unit);
  return read.ok ? [] : meaningsOf(read.error).map(meaningText);
}

describe('what a refused text may have meant', () => {
  it('offers the units in which the same number is possible', () => {
    const units = offered('inletPressureMbarG', '11', 'psi');
    expect(units).toContain('11 in w.c.');
    expect(units).toContain('11 mbar');
    for (const text of units) expect(parseTyped('inletPressureMbarG', text, 'psi').ok).toBe(true);
  });

  it('offers each reading of a number that has several', () => {
    expect(offered('coPpm', '1,234', 'ppm')).toEqual(['1.2340 ppm', '1234 ppm']);
  });

  it('never another number than the one that was typed, and no more than there are keys for', () => {
    // 92 % oxygen is impossible; that 9.2 was meant is for whoever holds the analyser to say.
    expect(offered('o2DryVolPct', '92', '%')).toEqual([]);
    for (const text of ['', 'much', '12 kg']) expect(offered('inletPressureMbarG', text, 'mbar')).toEqual([]);
    expect(offered('inletPressureMbarG', '11', 'psi').length).toBeLessThanOrEqual(4);
  });
});
