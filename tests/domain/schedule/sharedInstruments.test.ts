import { describe, expect, it } from 'vitest';
import type { HeldInstrument } from '../../../domain/schedule/heldInstruments.ts';
import { findShortages, type Outing } from '../../../domain/schedule/sharedInstruments.ts';

const ON = '2026-03-04';

function analyser(instrumentId: string, isShared: boolean, dueOn = '2026-12-31'): HeldInstrument {
  const calibrations = [{ calibratedOn: '2026-01-01', dueOn }];
  return { instrumentId, label: instrumentId, kinds: ['analyser'], isShared, calibrations };
}

const out = (staffId: string, on = ON): Outing => ({ on, staffId, kinds: ['analyser'] });
const person = (staffId: string, ...instruments: HeldInstrument[]) => ({ staffId, instruments });
const pool = analyser('pool', true);

describe('findShortages', () => {
  it('names the two who would need the one analyser that nobody keeps, on that day only', () => {
    const people = [person('ada', pool), person('bo', pool)];
    expect(findShortages([out('ada'), out('ada'), out('bo'), out('bo', '2026-03-05')], people)).toEqual([
      { on: ON, kind: 'analyser', staffIds: ['ada', 'bo'], inDate: 1 },
    ]);
  });

  it('is silent where one of them has their own, where a second one is in date, and where the work needs none', () => {
    const outings = [out('ada'), out('bo')];
    expect(findShortages(outings, [person('ada', pool, analyser('own', false)), person('bo', pool)])).toEqual([]);
    const second = analyser('second', true);
    expect(findShortages(outings, [person('ada', pool, second), person('bo', pool, second)])).toEqual([]);
    expect(findShortages([out('ada'), { ...out('bo'), kinds: [] }], [person('ada', pool), person('bo', pool)])).toEqual(
      [],
    );
  });

  it('does not count what has run out: an own one is no help then, and where none is left each is told so', () => {
    const old = analyser('own', false, '2026-03-03');
    expect(findShortages([out('ada'), out('bo')], [person('ada', pool, old), person('bo', pool)])[0]?.staffIds).toEqual(
      ['ada', 'bo'],
    );
    const ended = analyser('pool', true, '2026-03-03');
    expect(findShortages([out('ada'), out('bo')], [person('ada', ended), person('bo', ended)])).toEqual([]);
  });
});
