/** Where somebody must be, rule or no rule, and what is planned around it. */
import { describe, expect, it } from 'vitest';
import { buildPlan } from '../../../domain/schedule/buildPlan.ts';
import { checkPlan } from '../../../domain/schedule/check/checkPlan.ts';
import { findDisplaced } from '../../../domain/schedule/findDisplaced.ts';
import { insertSlots } from '../../../domain/schedule/insertSlots.ts';
import type { PlanVisit, Stay } from '../../../domain/schedule/planningProblem.ts';
import { MONDAY, sampleTechnician, sampleVisit, sampleWeek, WAY_MIN } from './sampleWeek.ts';

const control = { seed: 1, maxRounds: 50 };

function monday(stays: readonly Stay[]) {
  return sampleTechnician('ada', {
    days: sampleTechnician('ada').days.flatMap((day) => (day.date === MONDAY ? [{ ...day, stays }] : [])),
  });
}

const NOON: Stay = { visitId: 'elsewhere', placeId: 'south', fromMin: 700, toMin: 760 };

describe('a stay', () => {
  it('has a way to it and a way on from it', () => {
    const visits = [sampleVisit('one', { durationMin: 180 }), sampleVisit('other', { durationMin: 180 })];
    const problem = sampleWeek(visits, [monday([NOON])]);
    const { plan } = buildPlan(problem, control);
    expect(checkPlan(problem, plan)).toEqual([]);
    expect(plan.unplanned).toEqual([]);
    const [before, after] = plan.routes[0]?.stops ?? [];
    expect(before?.endMin).toBe(NOON.fromMin - WAY_MIN);
    expect(after?.startMin).toBe(NOON.toMin + WAY_MIN);
  });

  it('leaves out what its time alone would let in', () => {
    // 480 to 700 is 220: the way there and the work need 200, and the way on another 20.
    const fits = (durationMin: number): boolean => {
      const problem = sampleWeek([sampleVisit('one', { durationMin })], [monday([NOON, { ...NOON, toMin: 1100 }])]);
      const { plan } = buildPlan(problem, control);
      expect(checkPlan(problem, plan)).toEqual([]);
      return plan.unplanned.length === 0;
    };
    expect(fits(180)).toBe(true);
    expect(fits(181)).toBe(false);
  });

  it('is never judged itself: before the hours, upon another, too far from the one before', () => {
    const stays: readonly Stay[] = [
      { visitId: 'early', placeId: 'south', fromMin: 470, toMin: 600 },
      { visitId: 'upon it', placeId: 'east', fromMin: 540, toMin: 560 },
      { visitId: 'too near', placeId: 'south', fromMin: 605, toMin: 620 },
    ];
    const problem = sampleWeek([sampleVisit('one')], [monday(stays)]);
    const { plan } = buildPlan(problem, control);
    expect(checkPlan(problem, plan)).toEqual([]);
    expect(plan.routes[0]?.stops).toMatchObject([{ visitId: 'one', startMin: 620 + WAY_MIN }]);
  });
});

describe('booked visits that break a rule', () => {
  const pinned = (visitId: string, startMin: number, change: Partial<PlanVisit> = {}): PlanVisit =>
    sampleVisit(visitId, { pin: { technicianId: 'ada', date: MONDAY, startMin }, ...change });
  const asBooked = (visits: readonly PlanVisit[]) => ({
    routes: [
      {
        technicianId: 'ada',
        date: MONDAY,
        stops: visits.map(({ visitId, pin, durationMin }) => {
          const startMin = pin.startMin ?? 0;
          return { visitId, arriveMin: startMin, startMin, endMin: startMin + durationMin };
        }),
      },
    ],
  });

  it('leave no slot that only their time would allow', () => {
    // Nobody is there at 08:05; the day before it is closed, and after it a way of 20 leads on.
    const booked = [pinned('too early', 485)];
    const asked = sampleVisit('new', { placeId: 'east', durationMin: 60 });
    const problem = sampleWeek([...booked, asked], [monday([])]);
    const slots = insertSlots(problem, asBooked(booked), 'new');
    expect(slots).toMatchObject([
      { fromMin: 605 + WAY_MIN, toMin: 940, afterVisitId: 'too early', beforeVisitId: null },
    ]);
  });

  it('are both named when the way between them is too long', () => {
    const booked = [pinned('one', 600), pinned('other', 730, { placeId: 'east' })];
    const problem = sampleWeek(booked, [monday([])]);
    expect(findDisplaced(problem, asBooked(booked))).toEqual([
      { visitId: 'one', reasons: [{ code: 'pin-clash', withVisitIds: ['other'] }] },
      { visitId: 'other', reasons: [{ code: 'pin-clash', withVisitIds: ['one'] }] },
    ]);
  });
});
