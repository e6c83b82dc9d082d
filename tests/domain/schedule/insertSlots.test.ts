/** The slots offered on the phone against every minute of every gap, tried one by one with the checker. */
import { describe, expect, it } from 'vitest';
import { buildPlan } from '../../../domain/schedule/buildPlan.ts';
import { checkRoutes } from '../../../domain/schedule/check/checkRoutes.ts';
import { countScore } from '../../../domain/schedule/check/countScore.ts';
import { insertSlots } from '../../../domain/schedule/insertSlots.ts';
import { judgeDays } from '../../../domain/schedule/judgeDays.ts';
import type { Plan, Route } from '../../../domain/schedule/plan.ts';
import { NO_PIN, type PlanningProblem } from '../../../domain/schedule/planningProblem.ts';
import { randomProblem } from '../../support/planner/randomProblem.ts';

/** Everything planned held to its minute, so that a gap is a gap for both. */
function pinned(problem: PlanningProblem, plan: Plan): PlanningProblem {
  const at = new Map(
    plan.routes.flatMap((route) =>
      route.stops.map((stop) => [
        stop.visitId,
        { technicianId: route.technicianId, date: route.date, startMin: stop.startMin },
      ]),
    ),
  );
  return {
    ...problem,
    visits: problem.visits
      .filter((visit) => at.has(visit.visitId))
      .map((visit) => ({ ...visit, pin: at.get(visit.visitId) ?? NO_PIN })),
  };
}

/** Goals S2 to S5 of the cheapest place, all of them tried; null: there is none. */
function bestByHand(problem: PlanningProblem, plan: Plan, visitId: string): readonly number[] | null {
  const durationMin = problem.visits.find((one) => one.visitId === visitId)?.durationMin ?? 0;
  const before = countScore(problem, plan);
  let best: readonly number[] | null = null;
  for (const { technicianId, days } of problem.technicians) {
    for (const { date, startMin, endMin } of days) {
      const isHere = (route: Route): boolean => route.technicianId === technicianId && route.date === date;
      const here = plan.routes.find(isHere)?.stops ?? [];
      const others = plan.routes.filter((route) => !isHere(route));
      for (let start = startMin; start + durationMin <= endMin; start += 1) {
        const stop = { visitId, arriveMin: start, startMin: start, endMin: start + durationMin };
        if (here.some((one) => one.startMin < stop.endMin && start < one.endMin)) continue;
        const stops = [...here, stop].sort((a, b) => a.startMin - b.startMin);
        // Arrivals of the others follow from the new stop; only their starts are the plan's.
        const routes = [
          ...others,
          { technicianId, date, stops: stops.map((one) => ({ ...one, arriveMin: one.startMin })) },
        ];
        if (checkRoutes(problem, { routes }).length > 0) continue;
        const goals = countScore(problem, { routes })
          .slice(1, 6)
          .map((value, goal) => value - (before[goal + 1] ?? 0));
        if (best === null || isLess(goals, best)) best = goals;
      }
    }
  }
  return best;
}

function isLess(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((value, goal) => value !== b[goal]);
  return at >= 0 && (a[at] ?? 0) < (b[at] ?? 0);
}

describe('insertSlots', () => {
  it('offers first what trying every minute finds best', () => {
    let found = 0;
    for (let number = 1; number <= 60; number += 1) {
      const drawn = randomProblem(20_000 + number, { fewestVisits: 3, mostVisits: 7, isForOracle: true });
      const { plan } = buildPlan(drawn, { seed: number, maxRounds: 10 });
      const problem = pinned(drawn, plan);
      const free = drawn.visits[0];
      if (free === undefined) continue;
      const visit = { ...free, visitId: 'new', pin: NO_PIN, windows: null, mayPause: false };
      const asked = { ...problem, visits: [...problem.visits, visit] };
      const best = bestByHand(asked, plan, 'new');
      const slots = insertSlots(asked, plan, 'new', 10);
      const name = `problem ${20_000 + number}`;
      expect(slots.length > 0, name).toBe(best !== null);
      const [first] = slots;
      if (first === undefined || best === null) continue;
      found += 1;
      const withoutVisit = countScore(asked, plan);
      const leftOut = withoutVisit.slice(1, 5);
      const base = countScore(problem, plan);
      const goals = [first.daysLateKey, first.daysOutside, first.promisesMoved, first.wishesLacking].map(
        (value, goal) => value - ((leftOut[goal] ?? 0) - (base[goal + 1] ?? 0)),
      );
      expect([...goals, first.extraTravelMin], name).toEqual(best);
    }
    expect(found).toBeGreaterThan(30);
  });

  it('offers only what the checker accepts, at both ends of each slot', () => {
    let offered = 0;
    for (let number = 31; number <= 90; number += 1) {
      const drawn = randomProblem(number, { fewestVisits: 4, mostVisits: 8, isForOracle: true });
      const { plan } = buildPlan(drawn, { seed: 1, maxRounds: 10 });
      const problem = pinned(drawn, plan);
      const [first] = drawn.visits;
      if (first === undefined) continue;
      const visit = {
        ...first,
        visitId: 'new',
        pin: NO_PIN,
        windows: null,
        needs: [],
        durationMin: 30,
        mayPause: false,
      };
      const asked = { ...problem, visits: [...problem.visits, visit] };
      const slots = insertSlots(asked, plan, 'new', 10);
      offered += slots.length;
      for (const { technicianId, date, fromMin, toMin } of slots) {
        for (const startMin of [fromMin, toMin]) {
          const here = plan.routes.find((one) => one.technicianId === technicianId && one.date === date)?.stops ?? [];
          const stop = { visitId: 'new', arriveMin: startMin, startMin, endMin: startMin + 30 };
          const stops = [...here, stop]
            .sort((a, b) => a.startMin - b.startMin)
            .map((one) => ({ ...one, arriveMin: one.startMin }));
          const others = plan.routes.filter((one) => one.technicianId !== technicianId || one.date !== date);
          expect(checkRoutes(asked, { routes: [...others, { technicianId, date, stops }] })).toEqual([]);
        }
      }
      const possible = judgeDays(asked, plan, 'new').filter((day) => day.verdict.code === 'possible');
      if (slots.length < 10)
        expect(new Set(slots.map((slot) => `${slot.technicianId} ${slot.date}`)).size).toBe(possible.length);
    }
    expect(offered).toBeGreaterThan(30);
  });
});
