import { describe, expect, it } from 'vitest';
import { findLicenceProblem, type HeldLicence, keepsFromWork } from '../../../domain/schedule/gasLicence.ts';
import { findObstacles, isForbidding, type Worker } from '../../../domain/schedule/obstacles.ts';

const ON = '2026-03-04';
const licence = (maxKw: number | null, patch: Partial<HeldLicence> = {}): HeldLicence => ({
  fuel: null,
  maxKw,
  validFrom: '2025-01-01',
  validTo: '2027-01-01',
  ...patch,
});
const problem = (licences: readonly HeldLicence[], ratedInputKw: number | null) =>
  findLicenceProblem(licences, { on: ON, fuel: 'natural-gas', ratedInputKw });

describe('a licence with an upper limit', () => {
  // One country draws the line between domestic and other work at 70 kW (from memory).
  it.each([
    ['reaches its limit itself', [licence(70)], 70, null],
    ['ends above it', [licence(70)], 70.1, 'too-large'],
    ['says nothing of an appliance whose rating nobody knows', [licence(70)], null, 'rating-unknown'],
    ['does not matter beside one for every size', [licence(70), licence(null)], null, null],
    [
      'matters again when the one for every size has ended',
      [licence(70), licence(null, { validTo: '2026-01-01' })],
      null,
      'rating-unknown',
    ],
    [
      'matters again when the one for every size is for another fuel',
      [licence(70), licence(null, { fuel: 'propane' })],
      null,
      'rating-unknown',
    ],
  ] as const)('%s', (_what, licences, ratedInputKw, expected) => {
    expect(problem(licences, ratedInputKw)).toBe(expected);
  });

  it('keeps nobody from going there while the rating is unknown, and from everything once it is too large', () => {
    expect(keepsFromWork(problem([licence(70)], null))).toBe(false);
    expect(keepsFromWork(problem([licence(70)], 100))).toBe(true);
  });

  it('is a question beside whoever is to be sent: something to ask for, once for all jobs', () => {
    const worker: Worker = {
      activeFrom: '2020-01-01',
      activeTo: null,
      licences: [licence(70)],
      trainings: [],
      skills: [],
      hours: [{ weekday: 3, fromMin: 480, toMin: 1020, breakFromMin: null, breakToMin: null }],
      absences: [],
      instruments: [],
    };
    const demands = { instruments: [], insistsOnTraining: false, insistsOnInstruments: false };
    const of = { kind: 'service' as const, fuel: 'natural-gas' as const, maker: 'M', model: 'T', skills: [] };
    const work = { ...of, ...demands };
    const obstacles = (ratings: readonly (number | null)[]) =>
      findObstacles(
        worker,
        ratings.map((ratedInputKw) => ({ ...work, ratedInputKw })),
        { on: ON, fromMin: 600, durationMin: 60 },
      );
    expect(obstacles([null, null])).toEqual([{ code: 'rating-unknown' }]);
    expect(obstacles([null]).some(isForbidding)).toBe(false);
    expect(obstacles([null, 100])).toEqual([{ code: 'licence', why: 'too-large' }, { code: 'rating-unknown' }]);
    expect(obstacles([24])).toEqual([]);
  });
});
