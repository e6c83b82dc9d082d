import { describe, expect, it } from 'vitest';
import type { ProgressBlocker } from '../../../../domain/procedure/progressTypes.ts';
import { parseTyped } from '../../../../domain/quantity/parseTyped.ts';
import { figures } from '../../../../renderer/run/words/figures.ts';
import { subjectWords } from '../../../../renderer/run/words/findingWords.ts';
import { problemWords } from '../../../../renderer/run/words/problemWords.ts';
import { blockerWords } from '../../../../renderer/run/words/reasonWords.ts';

const sheet = { firingPoints: [{ key: 'high', label: 'High fire', settleS: 300 }] };

describe('subjectWords', () => {
  it.each([
    ['limit:coAirFreePpm@high', 'CO air-free, high fire'],
    ['limit:systemPressureBarG@hot', 'System pressure, hot'],
    ['computed:excess-air@high', 'Excess air, high fire'],
    ['ceiling:room-co-everybody-out@before', 'Room CO everybody out, before'],
    ['relation:systemPressureBarG@hot-cold', 'System pressure: hot minus cold'],
    ['mistake:o2-co2-swapped@high', 'O₂ and CO₂ swapped?'],
  ])('%s', (subject, words) => {
    expect(subjectWords({ subject }, sheet)).toBe(words);
  });
});

describe('blockerWords', () => {
  const source = { steps: [], firingPointLabel: () => 'high fire' };
  const few = (quantity: 'o2DryVolPct' | 'coPpm', have: number) =>
    ({ code: 'too-few-samples', quantity, have, need: 2 }) as const;
  const said = (...because: ProgressBlocker['because']) =>
    blockerWords({ stepKey: 'combustion', itemKey: 'flue', because }, source);

  it('says of a series what is to be done next, once', () => {
    expect(
      said({ code: 'firing-point-not-reached', firingPoint: 'high' }, few('o2DryVolPct', 0), few('coPpm', 0)),
    ).toBe('press when the burner is at high fire');
    expect(said(few('o2DryVolPct', 1), few('coPpm', 1))).toBe('1 of 2 samples');
    expect(said(few('o2DryVolPct', 2), few('coPpm', 1))).toMatch(/^O₂: 2 of 2 samples; CO.*: 1 of 2 samples$/);
  });
});

describe('problemWords', () => {
  it('names the range in the unit that was typed and where the number would fit', () => {
    const read = parseTyped('systemPressureBarG', '83', 'psi');
    const typed = parseTyped('systemPressureBarG', '500', 'psi');
    expect(read.ok).toBe(true);
    expect(typed.ok ? '' : problemWords(typed.error)).toContain('kPa');
  });

  it('does not take a text for a number', () => {
    const typed = parseTyped('coPpm', 'abc', 'ppm');
    expect(typed.ok ? '' : problemWords(typed.error)).toBe('“abc” is not a number.');
  });
});

describe('figures', () => {
  it.each([
    [0, '0'],
    [0.00432, '0.0043'],
    [0.0512, '0.0512'],
    [1.954, '1.95'],
    [28.42, '28.4'],
    [213.9, '214'],
  ])('%s is %s', (value, text) => {
    expect(figures(value)).toBe(text);
  });
});
