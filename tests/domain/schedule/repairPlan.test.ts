/** A technician is ill: what can stay stays, and no promise is broken that one simple move would keep. */
import { describe, expect, it } from 'vitest';
import { buildPlan } from '../../../domain/schedule/buildPlan.ts';
import { checkPlan } from '../../../domain/schedule/check/checkPlan.ts';
import { placementsOf } from '../../../domain/schedule/plan.ts';
import { planMoves } from '../../../domain/schedule/planMoves.ts';
import { repairPlan } from '../../../domain/schedule/repairPlan.ts';
import { findKeepablePromise } from '../../support/planner/keepablePromise.ts';
import { morningAfter } from '../../support/planner/morningAfter.ts';
import { randomProblem } from '../../support/planner/randomProblem.ts';
import { MONDAY, sampleTechnician, sampleVisit, sampleWeek, TUESDAY } from './sampleWeek.ts';

describe('repairPlan', () => {
  it('changes nothing when nothing has changed', () => {
    const problem = randomProblem(41, { fewestVisits: 20, mostVisits: 25, isForOracle: true });
    const { plan } = buildPlan(problem, { seed: 1, maxRounds: 100 });
    const told = { ...morningAfter(problem, plan), technicians: problem.technicians };
    const planned = { ...told, visits: told.visits.filter((visit) => placementsOf(plan).has(visit.visitId)) };
    const repaired = repairPlan(planned, plan, { seed: 1, maxRounds: 100 });
    expect(planMoves(placementsOf(plan), repaired.plan)).toEqual([]);
  });

  it('moves the visits of the one who is ill and leaves the others alone', () => {
    const problem = sampleWeek(
      [
        sampleVisit('hers', { promised: { date: MONDAY, fromMin: 480, toMin: 600 } }),
        sampleVisit('his', { placeId: 'east', promised: { date: MONDAY, fromMin: 660, toMin: 720 } }),
        sampleVisit('later', { placeId: 'south', promised: { date: TUESDAY, fromMin: 480, toMin: 600 } }),
      ],
      [
        sampleTechnician('ada', {
          days: sampleTechnician('ada').days.map((day) => ({ ...day, isAbsent: day.date === MONDAY })),
        }),
        sampleTechnician('bo'),
      ],
    );
    const stop = (visitId: string, startMin: number) => ({
      visitId,
      arriveMin: startMin,
      startMin,
      endMin: startMin + 120,
    });
    const current = {
      routes: [
        { technicianId: 'ada', date: MONDAY, stops: [stop('hers', 500)] },
        { technicianId: 'bo', date: MONDAY, stops: [stop('his', 660)] },
        { technicianId: 'ada', date: TUESDAY, stops: [stop('later', 500)] },
      ],
    };
    const { plan } = repairPlan(problem, current, { seed: 1, maxRounds: 200 });
    expect(checkPlan(problem, plan)).toEqual([]);
    expect(plan.score[3]).toBe(0);
    expect(planMoves(placementsOf(current), plan).map((move) => move.visitId)).toEqual(['hers']);
  });

  it('leaves the order of a day as it is, though another would be shorter', () => {
    // His way would be shorter the other way round once hers comes in between; nobody is told another hour for that.
    const minutes = { base: { north: 20, east: 60, south: 40 }, north: { east: 60, south: 20 }, east: { south: 20 } };
    const ways: Record<string, Record<string, number>> = minutes;
    const between = (from: string, to: string) => (from === to ? 0 : (ways[from]?.[to] ?? ways[to]?.[from] ?? 0));
    const week = sampleWeek(
      [
        sampleVisit('hers', { durationMin: 60, placeId: 'south' }),
        sampleVisit('first', { durationMin: 60, placeId: 'east' }),
        sampleVisit('second', { durationMin: 60, placeId: 'north' }),
        sampleVisit('third', { durationMin: 60, placeId: 'east' }),
      ],
      [
        sampleTechnician('ada', { days: sampleTechnician('ada').days.map((day) => ({ ...day, isAbsent: true })) }),
        sampleTechnician('bo'),
      ],
    );
    const places = week.places.map(({ placeId }) => placeId);
    const problem = {
      ...week,
      travel: { minutes: places.map((from) => places.map((to) => between(from, to))) },
    };
    const stop = (visitId: string, startMin: number) => ({
      visitId,
      arriveMin: startMin,
      startMin,
      endMin: startMin + 60,
    });
    const current = {
      routes: [
        { technicianId: 'ada', date: MONDAY, stops: [stop('hers', 500)] },
        { technicianId: 'bo', date: MONDAY, stops: [stop('first', 540), stop('second', 680), stop('third', 800)] },
      ],
    };
    const { plan } = repairPlan(problem, current, { seed: 1, maxRounds: 300 });
    expect(checkPlan(problem, plan)).toEqual([]);
    expect(planMoves(placementsOf(current), plan).map((move) => move.visitId)).toEqual(['hers']);
  });

  it('keeps every rule, and every promise that a single move could keep', () => {
    let moved = 0;
    for (let number = 1; number <= 40; number += 1) {
      const problem = randomProblem(30_000 + number, { fewestVisits: 6, mostVisits: 14, isForOracle: true });
      const { plan } = buildPlan(problem, { seed: number, maxRounds: 40 });
      const after = morningAfter(problem, plan);
      const repaired = repairPlan(after, plan, { seed: number, maxRounds: 150 }).plan;
      const name = `problem ${30_000 + number}`;
      expect(checkPlan(after, repaired), name).toEqual([]);
      expect(findKeepablePromise(after, repaired), name).toBeNull();
      moved += planMoves(placementsOf(plan), repaired).length;
    }
    expect(moved).toBeGreaterThan(20);
  });
});
