/** The planner's codes against the rules of the board, on the same people, jobs and days: they may never disagree. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type HeldInstrument,
  isInDate,
  kindsOfInstrument,
  spansInDate,
} from '../../../domain/schedule/heldInstruments.ts';
import { isForbidding, qualificationObstacles, type Work, type Worker } from '../../../domain/schedule/obstacles.ts';
import { codeOf, mustsOf, type Qualification, spansOf, wishesOf } from '../../../domain/schedule/qualifications.ts';
import { INSTRUMENT_KINDS } from '../../../domain/vocabulary/people.ts';

const day = fc.integer({ min: 1, max: 28 }).map((number) => `2026-03-${String(number).padStart(2, '0')}`);
const ends = fc.tuple(day, day).map(([a, b]) => (a <= b ? [a, b] : [b, a]) as [string, string]);
const kind = fc.constantFrom('analyser' as const, 'manometer' as const);

const calibrations = fc
  .array(
    ends.map(([calibratedOn, dueOn]) => ({ calibratedOn, dueOn })),
    { maxLength: 3 },
  )
  .map((list) => list.toSorted((a, b) => a.calibratedOn.localeCompare(b.calibratedOn)));

const instrument: fc.Arbitrary<HeldInstrument> = fc.record({
  instrumentId: fc.uuid(),
  label: fc.constant('Invented'),
  kinds: fc.uniqueArray(kind, { minLength: 1 }),
  isShared: fc.boolean(),
  calibrations,
});

const worker: fc.Arbitrary<Worker> = fc.record({
  activeFrom: fc.constant('2020-01-01'),
  activeTo: fc.constant(null),
  licences: fc.array(
    fc.record({
      fuel: fc.constantFrom(null, 'natural-gas' as const, 'propane' as const),
      maxKw: fc.constantFrom(null, 50, 100),
      validFrom: fc.constant('2026-01-01'),
      validTo: day,
    }),
    { maxLength: 2 },
  ),
  trainings: fc.array(
    fc
      .tuple(fc.constantFrom('Alder', 'ÁLDER', 'Birch'), fc.constantFrom('T', 'T 24', 'U'), ends, fc.boolean())
      .map(([maker, modelLine, [validFrom, validTo], isOpen]) => ({
        maker,
        modelLine,
        validFrom,
        validTo: isOpen ? null : validTo,
      })),
    { maxLength: 3 },
  ),
  skills: fc.subarray(['ladder', 'cascade']),
  hours: fc.constant([]),
  absences: fc.constant([]),
  instruments: fc.array(instrument, { maxLength: 3 }),
});

const work: fc.Arbitrary<Work> = fc.record({
  kind: fc.constantFrom('startup' as const, 'service' as const, 'repair' as const),
  fuel: fc.constantFrom(null, 'natural-gas' as const, 'propane' as const),
  ratedInputKw: fc.constantFrom(null, 24, 80, 120),
  maker: fc.constantFrom('alder', 'Birch'),
  model: fc.constantFrom('T 24', 'T-24 combi', 'U 30'),
  skills: fc.subarray(['ladder', 'cascade']),
  instruments: fc.uniqueArray(kind),
  insistsOnTraining: fc.boolean(),
  insistsOnInstruments: fc.boolean(),
});

const has = (who: Worker, asked: Qualification, on: string): boolean =>
  spansOf(who, asked).some(
    ({ code, validFrom, validTo }) => code === codeOf(asked) && (validFrom ?? on) <= on && on <= (validTo ?? on),
  );

describe('what the planner plans by', () => {
  it('keeps out whom the board forbids and nobody else, and wishes for what the board says', () => {
    fc.assert(
      fc.property(worker, fc.array(work, { minLength: 1, maxLength: 3 }), day, (who, raw, on) => {
        // A maker's sheet insists on a startup only.
        const works = raw.map((one) => ({
          ...one,
          insistsOnTraining: one.insistsOnTraining && one.kind === 'startup',
          insistsOnInstruments: one.insistsOnInstruments && one.kind === 'startup',
        }));
        const said = qualificationObstacles(who, works, on);
        const isKeptOut = mustsOf(works).some((asked) => !has(who, asked, on));
        expect(isKeptOut).toBe(said.some(isForbidding));
        const lacksWish = wishesOf(works).some((asked) => !has(who, asked, on));
        const weighed = said.filter(
          (one) => !isForbidding(one) && !['licence-elsewhere', 'rating-unknown'].includes(one.code),
        );
        // Said once of a visit: a course that is demanded and lacking stands for the one that is only wished for.
        if (lacksWish)
          expect(said.some((one) => one.code === 'no-training' || one.code === 'no-instrument')).toBe(true);
        else expect(weighed).toEqual([]);
      }),
    );
  });

  it('counts an instrument in date on the days on which it is, however its calibrations lie', () => {
    fc.assert(
      fc.property(calibrations, day, (list, on) => {
        const spans = spansInDate({ calibrations: list });
        expect(spans.some(({ validFrom, validTo }) => validFrom <= on && on <= validTo)).toBe(
          isInDate({ calibrations: list }, on),
        );
      }),
    );
  });

  it('takes an analyser with a pressure port for a manometer, and no thermometer in the flue for an analyser', () => {
    const port = { inletPressureMbarG: { abs: 0.1, relPct: 0 } };
    expect(kindsOfInstrument({ kind: 'analyser', accuracy: {}, rangeMax: {} })).toEqual(['analyser']);
    expect(kindsOfInstrument({ kind: 'analyser', accuracy: port, rangeMax: {} })).toEqual(['analyser', 'manometer']);
    expect(
      kindsOfInstrument({ kind: 'thermometer', accuracy: { flueGasC: { abs: 1, relPct: 0 } }, rangeMax: {} }),
    ).toEqual(['thermometer']);
    // What it is was not said: it may read anything, as it may when a reading is judged.
    expect(kindsOfInstrument({ kind: 'other', accuracy: {}, rangeMax: {} })).toEqual([
      'analyser',
      'manometer',
      'other',
    ]);
    expect(
      INSTRUMENT_KINDS.every((one) => kindsOfInstrument({ kind: one, accuracy: {}, rangeMax: {} }).includes(one)),
    ).toBe(true);
  });
});
