import { describe, expect, it } from 'vitest';
import { runProgress } from '../../../../domain/procedure/progress.ts';
import type { RunRecord } from '../../../../domain/procedure/runRecord.ts';
import { itemAfter, itemBeside, itemToOpen, whereToResume } from '../../../../renderer/run/state/itemAfter.ts';
import { DAY_START, emptyRecord, secondsAfter, withAnswer } from '../../../support/runRecordBuilder.ts';
import { A_BASIS, anItem, aStep, tinySheet } from '../../../support/tinySheet.ts';

const sheet = tinySheet([
  aStep('one', [anItem('confirm', 'a'), anItem('confirm', 'b'), anItem('confirm', 'c')]),
  aStep('two', [anItem('confirm', 'd'), anItem('hold', 'wait', { seconds: 600, basis: A_BASIS })]),
  aStep('three', [anItem('confirm', 'e')], { after: ['two'] }),
]);

function progressOf(record: RunRecord, now = DAY_START) {
  return runProgress({ sheet, steps: 'startup', record, findings: [], now });
}

function answered(...keys: readonly string[]): RunRecord {
  return keys.reduce((record, key) => withAnswer(record, key, 'yes', DAY_START), emptyRecord('natural-gas'));
}

describe('itemAfter', () => {
  it('is the next open item of the step, whatever was passed over before', () => {
    expect(itemAfter(progressOf(answered('b')), { stepKey: 'one', itemKey: 'b' })?.itemKey).toBe('c');
  });

  it('goes back for what was passed over once the end of the step is reached', () => {
    expect(itemAfter(progressOf(answered('b', 'c')), { stepKey: 'one', itemKey: 'c' })?.itemKey).toBe('a');
  });

  it('goes into the next step', () => {
    expect(itemAfter(progressOf(answered('a', 'b', 'c')), { stepKey: 'one', itemKey: 'c' })).toEqual({
      stepKey: 'two',
      itemKey: 'd',
    });
  });

  it('leaves a running wait for what else can be done, and comes back to it when there is nothing', () => {
    const hold = { itemKey: 'wait', startedAt: DAY_START, requiredS: 600, endedAt: null, clockJumped: false };
    const running = { ...answered('b', 'c', 'd'), holds: [hold] };
    const now = secondsAfter(DAY_START, 60);
    expect(itemAfter(progressOf(running, now), { stepKey: 'two', itemKey: 'wait' })?.itemKey).toBe('a');
    const all = { ...answered('a', 'b', 'c', 'd'), holds: [hold] };
    expect(itemAfter(progressOf(all, now), { stepKey: 'one', itemKey: 'a' })?.itemKey).toBe('wait');
    expect(itemAfter(progressOf(all, now), { stepKey: 'two', itemKey: 'wait' })).toBeNull();
  });
});

describe('itemToOpen', () => {
  it('takes a step up where it was left', () => {
    expect(itemToOpen(progressOf(answered('a')), 'one')?.itemKey).toBe('b');
    expect(itemToOpen(progressOf(answered('a', 'b', 'c')), 'one')?.itemKey).toBe('a');
    expect(itemToOpen(progressOf(answered()), 'nowhere')).toBeNull();
  });
});

describe('whereToResume', () => {
  it('is the step that is asked for, else the one last worked in', () => {
    const progress = progressOf(answered('a'));
    expect(whereToResume(progress, 'two', 'one')?.itemKey).toBe('d');
    expect(whereToResume(progress, null, 'two')?.itemKey).toBe('d');
    expect(whereToResume(progress, 'nowhere', 'one')?.itemKey).toBe('b');
    expect(whereToResume(progress, null, null)?.itemKey).toBe('b');
  });

  it('does not go back to the first item of a step that was through when the app was stopped', () => {
    expect(whereToResume(progressOf(answered('a', 'b', 'c')), null, 'one')?.itemKey).toBe('d');
  });
});

describe('itemBeside', () => {
  it('walks through open steps and stops at a locked one', () => {
    const progress = progressOf(answered());
    expect(itemBeside(progress, { stepKey: 'one', itemKey: 'c' }, 1)?.itemKey).toBe('d');
    expect(itemBeside(progress, { stepKey: 'two', itemKey: 'd' }, -1)?.itemKey).toBe('c');
    expect(itemBeside(progress, { stepKey: 'two', itemKey: 'wait' }, 1)).toBeNull();
    expect(itemBeside(progress, { stepKey: 'one', itemKey: 'a' }, -1)).toBeNull();
  });
});
