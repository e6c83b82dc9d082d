import { describe, expect, it } from 'vitest';
import { packetView } from '../../../electron/documents/packet/packetView.ts';
import { instrumentBlocks } from '../../../electron/documents/packet/sections/evidenceSection.ts';
import { samplePacket } from '../../support/packetSample.ts';

const sample = packetView(samplePacket());
const { run } = sample.record;

/** What the sample's run lists when its first readings and answers name these instruments and the others none. */
function listed(readings: readonly string[], answers: readonly string[]): readonly string[] {
  const [one] = run.instruments;
  if (one === undefined) throw new Error('the sample has no instrument');
  const named = <T>(rows: readonly T[], ids: readonly string[]) =>
    rows.map((row, index) => ({ ...row, instrumentId: ids[index] ?? null }));
  const changed = {
    ...run,
    instruments: ['analyser', 'leak-spray', 'spare'].map((instrumentId) => ({
      ...one,
      instrumentId,
      serial: instrumentId,
    })),
    readings: named(run.readings, readings),
    answers: named(run.answers, answers),
  };
  return instrumentBlocks({ ...sample, record: { ...sample.record, run: changed } }).flatMap((block) =>
    block.kind === 'table' ? block.rows.map((row) => `${row[1]?.text}: ${row.at(-1)?.text}`) : [],
  );
}

describe('the instruments of a packet', () => {
  it('are those something was measured or tested with, not everything the firm owns', () => {
    expect(listed(['analyser', 'analyser'], ['leak-spray'])).toEqual(['analyser: 2', 'leak-spray: 0']);
  });

  it('are not spoken of where nothing was measured with any', () => {
    expect(listed([], [])).toEqual([]);
  });
});
