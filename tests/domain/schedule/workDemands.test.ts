import { describe, expect, it } from 'vitest';
import { workDemandsOf } from '../../../domain/schedule/workDemands.ts';
import { readShippedSheet } from '../../support/shippedSheets.ts';
import { A_BASIS, tinySheet } from '../../support/tinySheet.ts';

const LOOK = { key: 'look', title: 'Look', who: 'anyone', items: [{ key: 'seen', label: 'Seen', kind: 'confirm' }] };

describe('workDemandsOf', () => {
  it('reads off the steps what they are measured with', () => {
    expect(workDemandsOf('startup', readShippedSheet('general-practice-natural-gas.json'))).toEqual({
      instruments: ['analyser', 'manometer'],
      insistsOnTraining: false,
      insistsOnInstruments: false,
    });
    expect(workDemandsOf('startup', tinySheet([LOOK])).instruments).toEqual([]);
  });

  it('insists on what the maker demands of a startup, and of a startup only', () => {
    const strict = tinySheet([LOOK], { startupBy: { training: A_BASIS, instruments: A_BASIS } });
    expect(workDemandsOf('startup', strict)).toMatchObject({ insistsOnTraining: true, insistsOnInstruments: true });
    expect(workDemandsOf('service', strict)).toMatchObject({ insistsOnTraining: false, insistsOnInstruments: false });
    const half = tinySheet([LOOK], { startupBy: { training: A_BASIS } });
    expect(workDemandsOf('startup', half).insistsOnInstruments).toBe(false);
  });
});
