import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planDay, type Stop } from '../../../domain/schedule/dayConflicts.ts';
import type { HeldInstrument } from '../../../domain/schedule/heldInstruments.ts';
import type { Worker } from '../../../domain/schedule/obstacles.ts';
import { NO_TABLE, toTravelTable } from '../../../domain/schedule/travelTable.ts';
import type { WayPlace } from '../../../domain/schedule/wayPlace.ts';

const ON = '2026-03-04';
const HOME: WayPlace = { at: { latitude: 44.6, longitude: -64 }, names: ['10 quay street graven bay', 'graven bay'] };
/** 0.1° of a meridian is 11.12 km; × 1.3 at 40 km/h: 22 minutes. */
const NORTH: WayPlace = { at: { latitude: 44.7, longitude: -64 }, names: ['4 mill road farrow mills', 'farrow mills'] };
const UNKNOWN: WayPlace = { at: null, names: [] };
const NORTH_MIN = 22;
const TRAVEL = { roadFactor: 1.3, speedKmPerH: 40, table: NO_TABLE };

const analyserUntil = (dueOn: string): HeldInstrument => ({
  instrumentId: 'a-1',
  label: 'Analyser 1',
  kinds: ['analyser', 'manometer'],
  isShared: false,
  calibrations: [{ calibratedOn: '2025-11-10', dueOn }],
});
const worker: Worker = {
  activeFrom: '2020-01-01',
  activeTo: null,
  licences: [{ fuel: null, maxKw: 100, validFrom: '2025-01-01', validTo: '2026-12-31' }],
  trainings: [{ maker: 'Invented maker', modelLine: 'T', validFrom: '2025-01-01', validTo: null }],
  skills: [],
  hours: [{ weekday: 3, fromMin: 480, toMin: 1020, breakFromMin: null, breakToMin: null }],
  absences: [],
  instruments: [analyserUntil('2026-11-09')],
};
const job = {
  kind: 'startup' as const,
  fuel: 'natural-gas' as const,
  ratedInputKw: 25,
  maker: 'Invented maker',
  model: 'T 24',
  skills: [],
  instruments: ['analyser' as const],
  insistsOnTraining: false,
  insistsOnInstruments: false,
  latestOn: null,
  latestWhy: null,
  wantedFromOn: null,
  wantedToOn: null,
  openReadiness: [],
  agedReadiness: [],
  isDone: false,
};
const stop = (visitId: string, startMin: number | null, patch: Partial<Stop> = {}): Stop => ({
  visitId,
  on: ON,
  startMin,
  durationMin: 60,
  place: NORTH,
  isAhead: true,
  isPencilled: false,
  promisedFromMin: null,
  promisedToMin: null,
  promisedOn: null,
  jobs: [job],
  ...patch,
});
const codes = (stops: readonly Stop[], visitId = 'a', who = worker, base = HOME) =>
  (planDay(ON, { worker: who, base }, stops, TRAVEL).conflicts.get(visitId) ?? []).map((one) =>
    one.code === 'obstacle' ? one.obstacle.code : one.code,
  );

describe('what does not fit on a day', () => {
  it('draws the way out, between and home', () => {
    const { legs } = planDay(ON, { worker, base: HOME }, [stop('a', 600), stop('b', 700, { place: HOME })], TRAVEL);
    expect(legs).toEqual([
      { fromVisitId: null, toVisitId: 'a', leaveMin: 600 - NORTH_MIN, minutes: NORTH_MIN },
      { fromVisitId: 'a', toVisitId: 'b', leaveMin: 700 - NORTH_MIN, minutes: NORTH_MIN },
      { fromVisitId: 'b', toVisitId: null, leaveMin: 760, minutes: 0 },
    ]);
  });

  it.each([
    ['nothing', [stop('a', 600)], []],
    ['two at once', [stop('a', 600), stop('b', 630)], ['overlap']],
    ['one that ends when the next begins, at the same place', [stop('a', 600), stop('b', 660)], []],
    ['too little time for the way', [stop('b', 520, { place: HOME }), stop('a', 590)], ['travel-too-short']],
    ['just enough time for the way', [stop('b', 520, { place: HOME }), stop('a', 580 + NORTH_MIN)], []],
    ['setting out before the hours', [stop('a', 490)], ['sets-out-early']],
    ['home after the hours', [stop('a', 950)], ['home-late']],
    ['ending after the hours', [stop('a', 970)], ['outside-hours']],
    ['before the promised window', [stop('a', 600, { promisedFromMin: 610, promisedToMin: 660 })], ['outside-promise']],
    ['at the end of the promised window', [stop('a', 660, { promisedFromMin: 610, promisedToMin: 660 })], []],
    ['another day than promised', [stop('a', 600, { promisedOn: '2026-03-05' })], ['day-not-promised']],
    ['the latest day itself', [stop('a', 600, { jobs: [{ ...job, latestOn: ON }] })], []],
    ['after the latest day', [stop('a', 600, { jobs: [{ ...job, latestOn: '2026-03-03' }] })], ['after-latest']],
    [
      'before the wanted days',
      [stop('a', 600, { jobs: [{ ...job, wantedFromOn: '2026-03-05' }] })],
      ['outside-wanted'],
    ],
    [
      'planned though not ready',
      [stop('a', 600, { jobs: [{ ...job, openReadiness: ['power'] }] })],
      ['readiness-open'],
    ],
    [
      'pencilled though not ready',
      [stop('a', 600, { isPencilled: true, jobs: [{ ...job, openReadiness: ['power'] }] })],
      [],
    ],
    [
      'work finished on another visit',
      [stop('a', 600, { jobs: [{ ...job, isDone: true, latestOn: '2026-03-03' }] })],
      ['work-done'],
    ],
    ['work of which some is left', [stop('a', 600, { jobs: [job, { ...job, isDone: true }] })], []],
    [
      'answers of long ago',
      [stop('a', 600, { jobs: [{ ...job, agedReadiness: [{ itemKey: 'power', askedDaysAgo: 9 }] }] })],
      ['readiness-old'],
    ],
    ['too large for the licence', [stop('a', 600, { jobs: [{ ...job, ratedInputKw: 120 }] })], ['licence']],
    ['a skill that is not there', [stop('a', 600, { jobs: [{ ...job, skills: ['cascade'] }] })], ['no-skill']],
    ['one that has begun', [stop('a', 600, { isAhead: false }), stop('b', 610, { isAhead: false })], []],
    ['no time yet: only what holds all day', [stop('a', null), stop('b', 600)], []],
  ])('says of %s: its codes', (_what, stops, expected) => {
    expect(codes(stops)).toEqual(expected);
  });

  it('judges the person as of the day', () => {
    const away = { fromOn: ON, toOn: ON, fromMin: 540, toMin: 660, reason: 'dentist' };
    expect(codes([stop('a', 600)], 'a', { ...worker, absences: [away] })).toEqual(['absent']);
    expect(codes([stop('a', 700)], 'a', { ...worker, absences: [away] })).toEqual([]);
    expect(codes([stop('a', 600)], 'a', { ...worker, instruments: [analyserUntil('2026-03-03')] })).toEqual([
      'no-instrument',
    ]);
    expect(codes([stop('a', 600)], 'a', { ...worker, activeTo: '2026-03-03' })).toEqual(['not-here']);
  });

  it('asks no way of a place that is not on the map', () => {
    expect(codes([stop('b', 520, { place: UNKNOWN }), stop('a', 580)])).toEqual([]);
    expect(codes([stop('a', 480)], 'a', worker, UNKNOWN)).toEqual([]);
  });

  it('takes the firm’s own minutes where it has the pair', () => {
    const table = toTravelTable([{ from: 'Graven Bay', to: 'Farrow Mills', minutes: 50 }]);
    const { legs, conflicts } = planDay(
      ON,
      { worker, base: HOME },
      [stop('a', 520), stop('b', 600, { place: { at: NORTH.at, names: ['elsewhere'] } })],
      { ...TRAVEL, table },
    );
    expect(legs.map(({ minutes }) => minutes)).toEqual([50, 0, NORTH_MIN]);
    expect(conflicts.get('a')).toEqual([{ code: 'sets-out-early', leaveMin: 470, hoursFromMin: 480 }]);
  });

  it('names an overlap on both visits, whichever comes first', () => {
    const start = fc.integer({ min: 480, max: 900 });
    fc.assert(
      fc.property(start, start, (a, b) => {
        const stops = [stop('a', a, { place: UNKNOWN }), stop('b', b, { place: UNKNOWN })];
        const isOverlap = Math.abs(a - b) < 60;
        expect(codes(stops, 'a').includes('overlap')).toBe(isOverlap);
        expect(codes(stops, 'b').includes('overlap')).toBe(isOverlap);
      }),
    );
  });
});
