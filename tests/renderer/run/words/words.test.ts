import { describe, expect, it } from 'vitest';
import type { ProgressBlocker } from '../../../../domain/procedure/progressTypes.ts';
import { parseTyped } from '../../../../domain/quantity/parseTyped.ts';
import { figures } from '../../../../renderer/run/words/figures.ts';
import { basisWords, subjectWords } from '../../../../renderer/run/words/findingWords.ts';
import { problemWords } from '../../../../renderer/run/words/problemWords.ts';
import { blockerWords } from '../../../../renderer/run/words/reasonWords.ts';
import { workedOutText } from '../../../../renderer/run/words/resultText.ts';
import { aFinding } from '../../../support/aFinding.ts';
import { anItem, aStep, tinySheet } from '../../../support/tinySheet.ts';

const sheet = { firingPoints: [{ key: 'high', label: 'High fire', settleS: 300 }] };

describe('subjectWords', () => {
  it.each([
    ['limit:coAirFreePpm@high', 'CO air-free, high fire'],
    ['limit:systemPressureBarG@hot', 'System pressure, hot'],
    ['computed:excess-air@high', 'Excess air, high fire'],
    ['ceiling:room-co-everybody-out@before', 'CO in the room, everybody out, before'],
    ['computed:cold-fill', 'Pressure the height needs'],
    ['limit:tightnessDropMbar@test', 'Pressure drop in the test'],
    ['relation:systemPressureBarG@hot-cold', 'System pressure: hot minus cold'],
    ['mistake:o2-co2-swapped@high', 'O₂ and CO₂ swapped?'],
  ])('%s', (subject, words) => {
    expect(subjectWords({ subject }, sheet)).toBe(words);
  });
});

describe('a finding named by its item', () => {
  it('says what the item says, not its key', () => {
    const items = [anItem('confirm', 'light-off', { label: 'How it lit' })];
    expect(subjectWords({ subject: 'light-off' }, tinySheet([aStep('first-fire', items)]))).toBe('How it lit');
  });
});

describe('basisWords', () => {
  it('says of a typing question that the number cannot be as typed', () => {
    const basis = { ...aFinding().basis, from: 'physics' as const, source: null };
    expect(basisWords({ subject: 'mistake:o2-co2-swapped@high', basis })).toBe('cannot be as typed');
    expect(basisWords({ subject: 'computed:x', basis })).toBe('cannot be otherwise');
  });
});

describe('workedOutText', () => {
  const basis = { ...aFinding().basis, result: { value: 6966.7, unit: 'ppm', plusMinus: null } };

  it('of an analyser over its range is “at least”, never a measured number', () => {
    const worked = (co: number | string) =>
      workedOutText(
        { subject: 'ceiling:flue-co-air-free@high', basis: { ...basis, inputs: { 'coPpm@high': co } } },
        'metric',
      );
    expect(worked('>4000')).toBe('> 6967 ppm');
    expect(worked(4000)).toBe('6967 ppm');
  });

  it('of a difference has the unit of what was subtracted', () => {
    const result = { value: 1.2, unit: '', plusMinus: null };
    const subject = 'relation:inletPressureMbarG@static-dynamic';
    expect(workedOutText({ subject, basis: { ...basis, result } }, 'metric')).toBe('1.20 mbar');
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

describe('blockerWords of a stop', () => {
  it('are the stop alone: what else is missing would bury it', () => {
    const source = { steps: [], firingPointLabel: () => 'high fire' };
    const because: ProgressBlocker['because'] = [
      { code: 'finding', finding: aFinding({ verdict: 'outside' }) },
      { code: 'finding', finding: aFinding({ verdict: 'stop' }) },
      { code: 'too-few-samples', quantity: 'coPpm', have: 1, need: 2 },
    ];
    expect(blockerWords({ stepKey: 'combustion', itemKey: 'flue', because }, source)).toBe('stop: make safe');
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
