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

  it('offers those of another kind that can read it: many analysers have a pressure port', () => {
    const withPort = { ...analyser, rangeMax: { inletPressureMbarG: 150 } };
    expect(worthNaming('inletPressureMbarG', [withPort], null)).toEqual([withPort]);
    expect(worthNaming('inletPressureMbarG', [analyser], null)).toEqual([]);
  });

  it('keeps one that is named already in sight', () => {
    expect(worthNaming('meterSeconds', [analyser], 'a')).toEqual([analyser]);
  });
});
