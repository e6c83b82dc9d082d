import { describe, expect, it } from 'vitest';
import type { RecordedInstrument } from '../../../../domain/procedure/runRecord.ts';
import { rememberedInstrument, rememberInstrument } from '../../../../renderer/run/instruments/rememberedInstrument.ts';
import { calibratedUntil } from '../../../support/calibratedUntil.ts';
import { memoryStorage } from '../memoryStorage.ts';

const TODAY = '2026-03-02';
const RUN = 'run-1';

function instrument(instrumentId: string, kind: RecordedInstrument['kind'], dueOn: string | null): RecordedInstrument {
  return {
    instrumentId,
    label: instrumentId,
    serial: instrumentId,
    kind,
    calibrations: calibratedUntil(dueOn),
    accuracy: {},
    rangeMax: {},
  };
}

describe('rememberedInstrument', () => {
  const inDate = instrument('a-1', 'analyser', '2027-01-01');
  const alsoInDate = instrument('a-2', 'analyser', '2026-03-02');
  const outOfDate = instrument('a-3', 'analyser', '2026-03-01');
  const manometer = instrument('m-1', 'manometer', null);

  it('takes the only one of its kind', () => {
    expect(rememberedInstrument(memoryStorage(), 'manometer', [inDate, manometer], TODAY, RUN)).toEqual({
      state: 'chosen',
      instrumentId: 'm-1',
    });
  });

  it('takes the only one in date', () => {
    expect(rememberedInstrument(memoryStorage(), 'analyser', [outOfDate, inDate], TODAY, RUN)).toEqual({
      state: 'chosen',
      instrumentId: 'a-1',
    });
  });

  it('asks where two would do, and where none of the kind is on file', () => {
    expect(rememberedInstrument(memoryStorage(), 'analyser', [inDate, alsoInDate], TODAY, RUN)).toEqual({
      state: 'unknown',
    });
    expect(rememberedInstrument(memoryStorage(), 'analyser', [manometer], TODAY, RUN)).toEqual({ state: 'unknown' });
  });

  it('remembers what was said for the kind, also that it was none in this run', () => {
    const memory = memoryStorage();
    rememberInstrument(memory, 'analyser', 'a-2', RUN);
    expect(rememberedInstrument(memory, 'analyser', [inDate, alsoInDate], TODAY, RUN)).toEqual({
      state: 'chosen',
      instrumentId: 'a-2',
    });
    rememberInstrument(memory, 'analyser', null, RUN);
    expect(rememberedInstrument(memory, 'analyser', [inDate, alsoInDate], TODAY, RUN)).toEqual({
      state: 'chosen',
      instrumentId: null,
    });
    expect(rememberedInstrument(memory, 'analyser', [inDate, alsoInDate], TODAY, 'run-2')).toEqual({
      state: 'unknown',
    });
  });

  it('forgets one that is no longer on file', () => {
    const memory = memoryStorage();
    rememberInstrument(memory, 'analyser', 'sold', RUN);
    expect(rememberedInstrument(memory, 'analyser', [inDate, alsoInDate], TODAY, RUN)).toEqual({ state: 'unknown' });
  });
});
