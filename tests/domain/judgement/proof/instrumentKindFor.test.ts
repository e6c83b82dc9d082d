import { describe, expect, it } from 'vitest';
import { canRead, instrumentKindFor } from '../../../../domain/judgement/proof/instrumentKindFor.ts';
import { NEEDS_INSTRUMENT } from '../../../../domain/judgement/quantityGroups.ts';
import type { RecordedInstrument } from '../../../../domain/procedure/runRecord.ts';

describe('instrumentKindFor', () => {
  it('knows the kind for every number that only an instrument can give', () => {
    expect([...NEEDS_INSTRUMENT].filter((quantity) => instrumentKindFor(quantity) === null)).toEqual([]);
  });

  it('asks for none where a display or a dial is read', () => {
    expect(instrumentKindFor('burnerPowerPct')).toBeNull();
    expect(instrumentKindFor('meterDialM3')).toBeNull();
  });
});

describe('canRead', () => {
  it.each([
    ['waterPh', 'water-test'],
    ['inletPressureMbarG', 'manometer'],
    ['flameCurrentUa', 'multimeter'],
    ['coPpm', 'analyser'],
    ['coPpm', 'other'],
  ] as const)('takes %s from a %s', (quantity, kind) => {
    expect(canRead(instrument(kind), quantity)).toBe(true);
  });

  it.each([
    ['waterPh', 'analyser'],
    ['condensatePouredL', 'analyser'],
    ['supplyVoltageV', 'analyser'],
    ['inletPressureMbarG', 'analyser'],
    ['coPpm', 'manometer'],
    ['ventPhotos', 'analyser'],
  ] as const)('does not believe %s from a %s', (quantity, kind) => {
    expect(canRead(instrument(kind), quantity)).toBe(false);
  });

  it('takes a quantity that the data sheet of the instrument names: an analyser with a pressure port', () => {
    const withPort = { ...instrument('analyser'), accuracy: { inletPressureMbarG: { abs: 0.5, relPct: 1 } } };
    expect(canRead(withPort, 'inletPressureMbarG')).toBe(true);
  });
});

function instrument(kind: RecordedInstrument['kind']): Pick<RecordedInstrument, 'kind' | 'accuracy' | 'rangeMax'> {
  return { kind, accuracy: {}, rangeMax: {} };
}
