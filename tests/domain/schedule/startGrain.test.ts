/** Proposed starts on the quarter of an hour, and what is never given up for it. */
import { describe, expect, it } from 'vitest';
import { buildPlan } from '../../../domain/schedule/buildPlan.ts';
import { checkPlan } from '../../../domain/schedule/check/checkPlan.ts';
import { checkRoutes } from '../../../domain/schedule/check/checkRoutes.ts';
import { findDisplaced } from '../../../domain/schedule/findDisplaced.ts';
import { insertSlots } from '../../../domain/schedule/insertSlots.ts';
import { type Plan, placementsOf } from '../../../domain/schedule/plan.ts';
import { planMoves } from '../../../domain/schedule/planMoves.ts';
import type { PlanningProblem, PlanVisit } from '../../../domain/schedule/planningProblem.ts';
import { repairPlan } from '../../../domain/schedule/repairPlan.ts';
import { companyWeek } from '../../bench/companyWeek.ts';
import { randomProblem } from '../../support/planner/randomProblem.ts';
import { MONDAY, sampleTechnician, sampleVisit, sampleWeek } from './sampleWeek.ts';

const control = { seed: 1, maxRounds: 60 };

function oneDay(visits: readonly PlanVisit[], hours: { readonly startMin: number; readonly endMin: number }) {
  const ada = sampleTechnician('ada');
  const days = ada.days.slice(0, 1).map((day) => ({ ...day, ...hours, ordinaryEndMin: hours.endMin }));
  return { ...sampleWeek(visits, [{ ...ada, days }]), grainMin: 15 };
}

function startsOf(problem: PlanningProblem): readonly (number | undefined)[] {
  const { plan } = buildPlan(problem, control);
  expect(checkPlan(problem, plan)).toEqual([]);
  const placements = placementsOf(plan);
  return problem.visits.map(({ visitId }) => placements.get(visitId)?.startMin);
}

describe('proposed starts', () => {
  it('are on the quarter, the next one after somebody can be there', () => {
    // There at 08:20; over at 10:05; in the east at 10:25.
    const visits = [sampleVisit('one', { durationMin: 100 }), sampleVisit('other', { placeId: 'east' })];
    const starts = startsOf(oneDay(visits, { startMin: 480, endMin: 1020 }));
    expect(starts.map((start) => (start ?? 1) % 15)).toEqual([0, 0]);
    const alone = oneDay([sampleVisit('one')], { startMin: 480, endMin: 1020 });
    expect(startsOf(alone)).toEqual([510]);
  });

  it('are to the minute where the hours leave no quarter', () => {
    expect(startsOf(oneDay([sampleVisit('one')], { startMin: 481, endMin: 645 }))).toEqual([501]);
  });

  it('are to the minute where the window has no quarter, and as pinned', () => {
    const windows = [{ date: MONDAY, fromMin: 601, toMin: 614 }];
    expect(startsOf(oneDay([sampleVisit('one', { windows })], { startMin: 480, endMin: 1020 }))).toEqual([601]);
    const pin = { technicianId: null, date: null, startMin: 607 };
    expect(startsOf(oneDay([sampleVisit('one', { pin })], { startMin: 480, endMin: 1020 }))).toEqual([607]);
  });

  it('leave out nothing that a start to the minute would let in', () => {
    // 20 there, four visits of 47 at one place, 20 home: 228 minutes, and the hours are not one longer.
    const visits = ['a', 'b', 'c', 'd'].map((visitId) => sampleVisit(visitId, { durationMin: 47 }));
    const starts = startsOf(oneDay(visits, { startMin: 490, endMin: 718 }));
    expect(starts.toSorted()).toEqual([510, 557, 604, 651]);
  });

  it('stay where somebody has put them when others move', () => {
    const visits = [sampleVisit('by hand'), sampleVisit('ill', { placeId: 'east', durationMin: 60 })];
    const problem = oneDay(visits, { startMin: 480, endMin: 1020 });
    const stop = { visitId: 'by hand', arriveMin: 607, startMin: 607, endMin: 727 };
    const current: Pick<Plan, 'routes'> = { routes: [{ technicianId: 'ada', date: MONDAY, stops: [stop] }] };
    const { plan } = repairPlan(problem, current, control);
    expect(checkPlan(problem, plan)).toEqual([]);
    const moves = planMoves(placementsOf(current), plan);
    expect(moves.map(({ visitId, to }) => [visitId, to.startMin % 15])).toEqual([['ill', 0]]);
  });

  it('leave a plan to the minute as it is when it is taken up again', () => {
    for (const seed of [1, 2, 3]) {
      const week = companyWeek(seed, { technicians: 3, visits: 60, days: 5 });
      const { plan } = buildPlan({ ...week, grainMin: 1 }, { seed, maxRounds: 200 });
      expect(findDisplaced({ ...week, grainMin: 15 }, plan)).toEqual([]);
    }
  });

  it('are nearly all on the quarter in a full week, with no visit more left out', () => {
    for (const seed of [1, 2, 3]) {
      const week = companyWeek(seed, { technicians: 5, visits: 75, days: 5 });
      const plans = [15, 1].map((grainMin) => buildPlan({ ...week, grainMin }, { seed, maxRounds: 1500 }).plan);
      const [onGrain, exact] = plans;
      const starts = [...placementsOf(onGrain ?? { routes: [] }).values()].map(({ startMin }) => startMin);
      expect(starts.filter((start) => start % 15 !== 0).length).toBeLessThanOrEqual(1);
      expect(onGrain?.unplanned.length).toBe(exact?.unplanned.length);
      expect(onGrain?.score[1]).toBe(exact?.score[1]);
    }
  });

  it('are off the quarter only where the others leave no quarter in the same window', () => {
    let off = 0;
    for (let number = 1; number <= 120; number += 1) {
      const problem = { ...randomProblem(50_000 + number, { fewestVisits: 8, mostVisits: 30 }), grainMin: 15 };
      const { plan } = buildPlan(problem, { seed: number, maxRounds: 30 });
      const waitedFor = new Set(problem.visits.map((visit) => visit.afterVisitId));
      for (const visit of problem.visits) {
        const at = placementsOf(plan).get(visit.visitId);
        if (at === undefined || at.startMin % 15 === 0) continue;
        if (visit.state !== 'open' || visit.pin.startMin !== null || waitedFor.has(visit.visitId)) continue;
        off += 1;
        expect(quarterFor(problem, plan, visit), `${visit.visitId} of problem ${50_000 + number}`).toBeNull();
      }
    }
    // A check that never meets a case proves nothing about it.
    expect(off).toBeGreaterThan(20);
  });
});

/** A quarter to which the visit alone could be shifted in its place and its window, by the checker; null: none. */
function quarterFor(problem: PlanningProblem, plan: Plan, visit: PlanVisit): number | null {
  const at = placementsOf(plan).get(visit.visitId);
  if (at === undefined) return null;
  const holds = (fromMin: number, toMin: number, minute: number) => fromMin <= minute && minute <= toMin;
  const windows = visit.windows?.filter((one) => one.date === at.date && holds(one.fromMin, one.toMin, at.startMin));
  const { promised } = visit;
  const keepsPromise = (minute: number): boolean =>
    promised?.date === at.date && holds(promised.fromMin, promised.toMin, minute);
  for (let minute = 0; minute < 1440; minute += 15) {
    // Of windows that overlap, whichever it was planned in.
    if (windows?.some((one) => !holds(one.fromMin, one.toMin, minute)) === true) continue;
    if (keepsPromise(minute) !== keepsPromise(at.startMin)) continue;
    const routes = plan.routes.map((route) => ({
      ...route,
      stops: route.stops.map((stop) => {
        const shift = stop.visitId === visit.visitId ? minute - stop.startMin : 0;
        // Arrivals follow from the starts; a pause would change the length.
        return {
          ...stop,
          arriveMin: stop.startMin + shift,
          startMin: stop.startMin + shift,
          endMin: stop.endMin + shift,
        };
      }),
    }));
    if (checkRoutes(problem, { routes }).length === 0) return minute;
  }
  return null;
}

describe('slots for a caller', () => {
  it('begin and end on the quarter where there is one, each place once', () => {
    let found = 0;
    for (let seed = 1; seed <= 3; seed += 1) {
      const week = companyWeek(seed, { technicians: 4, visits: 40, days: 5 });
      const { plan } = buildPlan(week, { seed, maxRounds: 100 });
      const asked = { ...week, visits: [...week.visits, sampleVisit('new', { placeId: 'site-1', durationMin: 60 })] };
      const slots = insertSlots(asked, plan, 'new', 10);
      const places = slots.map(
        (slot) => `${slot.technicianId} ${slot.date} ${slot.afterVisitId} ${slot.promisesMoved}`,
      );
      expect(new Set(places).size).toBe(places.length);
      for (const { fromMin, toMin } of slots) {
        const hasQuarter = Math.ceil(fromMin / 15) * 15 <= toMin;
        if (hasQuarter) expect([fromMin % 15, toMin % 15]).toEqual([0, 0]);
        found += hasQuarter ? 1 : 0;
      }
    }
    expect(found).toBeGreaterThan(10);
  });
});
