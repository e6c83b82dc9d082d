import { describe, expect, it } from 'vitest';
import type { BoardData } from '../../../renderer/board/boardModel.ts';
import { wayOf, weekMapOf } from '../../../renderer/board/map/weekMapModel.ts';

const DAYS = ['2026-03-02', '2026-03-03'];
const BASE = { street: null, postcode: null, city: null, latitude: 44.6, longitude: -64 };

type Visit = BoardData['visits'][number];

function visit(visitId: string, staffIds: readonly string[], change: Partial<Visit> = {}): Visit {
  return {
    visitId,
    siteId: `site of ${visitId}`,
    customerId: 'c',
    customerName: 'Lowri Kestrel',
    street: '9 Fathom Street',
    postcode: null,
    city: 'Graven Bay',
    latitude: 44.65,
    longitude: -63.57,
    state: 'planned',
    plannedOn: '2026-03-02',
    startMin: 540,
    durationMin: 60,
    plannedFrom: null,
    plannedTo: null,
    promisedOn: null,
    isTechnicianPinned: false,
    isDayPinned: false,
    isStartPinned: false,
    revision: 0,
    crew: staffIds.map((staffId, index) => ({ staffId, name: staffId, role: index === 0 ? 'licensed' : 'helper' })),
    jobs: [],
    ...change,
  };
}

function data(visits: readonly Visit[]): BoardData {
  const person = (staffId: string): BoardData['technicians'][number] => ({
    staffId,
    name: staffId,
    initials: staffId.toUpperCase(),
    roles: ['technician'],
    activeFrom: '2020-01-01',
    activeTo: null,
    hours: [],
    skills: [],
    base: staffId === 'ada' ? { ...BASE, latitude: 44.61 } : { ...BASE, latitude: null },
    absences: [],
    licences: [],
    trainings: [],
    instruments: [],
  });
  return {
    technicians: ['ada', 'bo'].map(person),
    visits: [...visits],
    unplaced: [],
    travel: { roadFactor: 1.3, speedKmPerH: 40, firm: BASE, pairs: [] },
  };
}

const told = (found: ReturnType<typeof weekMapOf>) =>
  found.people.map(({ staffId, days }) => [
    staffId,
    days.map(({ on, stops }) => [on, stops.map((stop) => `${stop.order} ${stop.visit.visitId}`)]),
  ]);

describe('weekMapOf', () => {
  const visits = [
    visit('late', ['ada', 'bo'], { startMin: 800 }),
    visit('early', ['ada']),
    visit('any', ['ada'], { startMin: null }),
    visit('next', ['bo'], { plannedOn: '2026-03-03' }),
    visit('nobody', []),
    visit('other week', ['ada'], { plannedOn: '2026-03-10' }),
  ];

  it('lists each person’s stops of a day in their order, once for whoever leads, without a time at the end', () => {
    expect(told(weekMapOf(data(visits), DAYS, null))).toEqual([
      ['ada', [['2026-03-02', ['1 early', '2 late', '3 any']]]],
      ['bo', [['2026-03-03', ['1 next']]]],
    ]);
    expect(told(weekMapOf(data(visits), DAYS, '2026-03-03'))).toEqual([['bo', [['2026-03-03', ['1 next']]]]]);
    expect(weekMapOf(data(visits), DAYS, null).unmanned.map((stop) => stop.visit.visitId)).toEqual(['nobody']);
  });

  it('draws the same person the same way on every day', () => {
    const styleOf = (day: string | null) =>
      weekMapOf(data(visits), DAYS, day).people.find(({ staffId }) => staffId === 'bo')?.style;
    expect(styleOf('2026-03-03')).toBe(styleOf(null));
  });

  it('leads from the base by the stops that are on the map and home, from the firm where there is no base', () => {
    const found = weekMapOf(
      data([visit('a', ['bo'], { latitude: null }), visit('b', ['bo'], { startMin: 600 })]),
      DAYS,
      null,
    );
    const [bo] = found.people;
    expect(bo?.days[0]?.stops.map(({ at }) => at === null)).toEqual([true, false]);
    const firm = { latitude: 44.6, longitude: -64 };
    expect(wayOf({ base: firm }, bo?.days[0]?.stops ?? [])).toEqual([
      firm,
      { latitude: 44.65, longitude: -63.57 },
      firm,
    ]);
    expect(bo?.base).toEqual(firm);
    expect(wayOf({ base: firm }, [])).toEqual([]);
    expect(wayOf({ base: null }, bo?.days[0]?.stops ?? [])).toHaveLength(1);
  });
});
