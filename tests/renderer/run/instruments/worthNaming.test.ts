import { describe, expect, it } from 'vitest';
import { worthNaming } from '../../../../renderer/run/instruments/instrumentChoices.ts';
import { calibratedUntil } from '../../../support/calibratedUntil.ts';

const analyser = {
  instrumentId: 'a',
  label: 'Analyser',
  serial: 'A-1',
  kind: 'analyser',
  calibrations: calibratedUntil(null),
  accuracy: {},
  rangeMax: {},
} as const;

describe('which instruments are offered beside a number', () => {
  it('offers none where those there are say nothing of it', () => {
    expect(worthNaming('meterSeconds', [analyser], null)).toEqual([]);
  });

  it('offers those of another kind where a number proves nothing without one: many analysers read pressure', () => {
    expect(worthNaming('inletPressureMbarG', [analyser], null)).toEqual([analyser]);
  });

  it('keeps one that is named already in sight', () => {
    expect(worthNaming('meterSeconds', [analyser], 'a')).toEqual([analyser]);
  });
});
