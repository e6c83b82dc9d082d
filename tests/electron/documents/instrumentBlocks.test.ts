import { describe, expect, it } from 'vitest';
import type { PacketView } from '../../../electron/documents/packet/packetView.ts';
import { instrumentBlocks } from '../../../electron/documents/packet/sections/evidenceSection.ts';

const instrument = (instrumentId: string) => ({
  instrumentId,
  label: `Instrument ${instrumentId}`,
  serial: instrumentId,
  calibratedOn: null,
  calibrationDueOn: null,
  certificate: null,
});

function listed(readings: readonly (string | null)[], answers: readonly (string | null)[]): readonly string[] {
  const by = (instrumentId: string | null) => ({ instrumentId });
  const run = {
    instruments: ['analyser', 'leak-spray', 'spare'].map(instrument),
    readings: readings.map(by),
    answers: answers.map(by),
  };
  const view = { record: { run }, visitOn: '2026-03-02' } as unknown as PacketView;
  return instrumentBlocks(view).flatMap((block) =>
    block.kind === 'table' ? block.rows.map((row) => `${row[1]?.text}: ${row.at(-1)?.text}`) : [],
  );
}

describe('the instruments of a packet', () => {
  it('are those something was measured or tested with, not everything the firm owns', () => {
    expect(listed(['analyser', 'analyser', null], ['leak-spray', null])).toEqual(['analyser: 2', 'leak-spray: 0']);
  });

  it('are not spoken of where nothing was measured with any', () => {
    expect(listed([null], [null])).toEqual([]);
  });
});
