import { describe, expect, it } from 'vitest';
import { answerText, readingText } from '../../../../renderer/run/stage/answerText.ts';
import { DAY_START, emptyRecord, reading, withAnswer, withReading } from '../../../support/runRecordBuilder.ts';
import { anItem, aStep, tinySheet } from '../../../support/tinySheet.ts';

const sheet = tinySheet([
  aStep('any', [
    anItem('confirm', 'done'),
    anItem('read', 'pressure', { quantity: 'systemPressureBarG', point: 'cold' }),
    anItem('note', 'next-service', { holds: 'date' }),
  ]),
]);
const [confirm, read, note] = sheet.startup[0]?.items ?? [];
const record = emptyRecord('natural-gas');

describe('readingText', () => {
  it('gives back as typed what was typed in the reader’s own unit', () => {
    const typed = { typedText: '1.255', typedUnit: 'bar' };
    expect(readingText(reading('pressure', 'systemPressureBarG', 1.255, DAY_START, typed), 'metric')).toBe('1.255 bar');
    expect(readingText(reading('pressure', 'systemPressureBarG', 1.255, DAY_START, typed), 'us')).toBe('18.2 psi');
  });

  it('keeps the mark of a reading over the range', () => {
    const over = reading('flue', 'coPpm', 4000, DAY_START, { typedText: '>4000', typedUnit: 'ppm', comparator: '>' });
    expect(readingText(over, 'metric')).toBe('>4000 ppm');
  });

  it('says why nothing was measured', () => {
    const none = reading('pressure', 'systemPressureBarG', null, DAY_START, { notMeasuredReason: 'no gauge' });
    expect(readingText(none, 'metric')).toBe('not measured: no gauge');
  });
});

describe('answerText', () => {
  it('is nothing until something was answered', () => {
    for (const item of [confirm, read, note]) if (item) expect(answerText(item, { record }, 'metric')).toBeNull();
  });

  it('says what was answered and why', () => {
    if (!confirm || !note || !read) throw new Error('the sheet has lost an item');
    const answered = withAnswer(
      withAnswer(record, 'done', 'no', DAY_START, { reason: 'clamp missing' }),
      'next-service',
      '2027-03-02',
      DAY_START,
    );
    expect(answerText(confirm, { record: answered }, 'metric')).toBe('no (clamp missing)');
    expect(answerText(note, { record: answered }, 'metric')).toBe('2 March 2027');
    const leftOut = withAnswer(record, 'done', null, DAY_START, { reason: 'no access' });
    expect(answerText(confirm, { record: leftOut }, 'metric')).toBe('not possible: no access');
    const measured = withReading(record, reading('pressure', 'systemPressureBarG', 1.2, DAY_START));
    expect(answerText(read, { record: measured }, 'metric')).toBe('1.20 bar');
  });
});
