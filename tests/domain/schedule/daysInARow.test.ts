import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildPlan } from '../../../domain/schedule/buildPlan.ts';
import { checkPlan } from '../../../domain/schedule/check/checkPlan.ts';
import { findLongerThanADay, overDaysInARow, SHORTEST_LAST_DAY_MIN } from '../../../domain/schedule/daysInARow.ts';
import { placementsOf, type Route } from '../../../domain/schedule/plan.ts';
import type { PlanningProblem, PlanVisit, Technician } from '../../../domain/schedule/planningProblem.ts';
import { MONDAY, sampleTechnician, sampleVisit, sampleWeek, TUESDAY } from './sampleWeek.ts';

const WEDNESDAY = '2026-06-03';
const FRIDAY = '2026-06-05';

/** Three days from eight to five with a break at noon; the way takes 20 minutes, so 8 h 20 less half an hour can be worked. */
function person(technicianId: string, change: Partial<Technician> = {}): Technician {
  return sampleTechnician(technicianId, {
    days: [MONDAY, TUESDAY, WEDNESDAY].map((date) => ({
      date,
      startMin: 480,
      endMin: 1020,
      ordinaryEndMin: 1020,
      breaks: [{ fromMin: 720, toMin: 750 }],
      stays: [],
      isAbsent: false,
    })),
    ...change,
  });
}

const cascade = (durationMin: number, change: Partial<PlanVisit> = {}) =>
  sampleVisit('long', { durationMin, mayPause: true, ...change });

function week(visits: readonly PlanVisit[], technicians: readonly Technician[], grainMin = 15): PlanningProblem {
  return { ...sampleWeek(visits, technicians), lastDate: WEDNESDAY, grainMin };
}

const told = (parts: readonly PlanVisit[] | null) =>
  parts?.map(({ pin, durationMin }) => [pin.technicianId, pin.date, pin.startMin, durationMin]) ?? null;

describe('work longer than a day', () => {
  it('is what fits into no whole day with the ways there and back', () => {
    // On the quarter: from 08:30 until 16:40 less half an hour are 460 minutes, 450 in quarters.
    expect(findLongerThanADay(week([cascade(450)], [person('ada')]), [cascade(450)])).toHaveLength(0);
    expect(findLongerThanADay(week([cascade(451)], [person('ada')]), [cascade(451)])).toHaveLength(1);
    // Nobody who may do it: that is the reason then, not its length.
    const oil = cascade(900, { needs: ['oil'] });
    expect(findLongerThanADay(week([oil], [person('ada')]), [oil])).toHaveLength(0);
  });

  it('takes the first days in a row, the last one no shorter than is worth the way', () => {
    const split = (durationMin: number) => {
      const visit = cascade(durationMin);
      return told(overDaysInARow(week([visit], [person('ada')]), [], visit));
    };
    expect(split(720)).toEqual([
      ['ada', MONDAY, 510, 450],
      ['ada', TUESDAY, 510, 270],
    ]);
    expect(split(480)).toEqual([
      ['ada', MONDAY, 510, 420],
      ['ada', TUESDAY, 510, SHORTEST_LAST_DAY_MIN],
    ]);
    expect(split(1350)?.length).toBe(3);
    expect(split(1351)).toBeNull();
  });

  it('goes round what is booked, over a day off and never over another person’s days', () => {
    const visit = cascade(720);
    const booked = sampleVisit('booked', { pin: { technicianId: 'ada', date: MONDAY, startMin: 780 } });
    const routes: readonly Route[] = [
      { technicianId: 'ada', date: MONDAY, stops: [{ visitId: 'booked', arriveMin: 780, startMin: 780, endMin: 900 }] },
    ];
    expect(told(overDaysInARow(week([visit, booked], [person('ada')]), routes, visit))?.[0]?.[1]).toBe(TUESDAY);
    const days = person('ada').days.map((one) => ({ ...one, isAbsent: one.date === TUESDAY }));
    expect(told(overDaysInARow(week([visit], [person('ada', { days })]), [], visit))?.map((part) => part[1])).toEqual([
      MONDAY,
      WEDNESDAY,
    ]);
    const [monday, tuesday] = person('ada').days;
    if (monday === undefined || tuesday === undefined) throw new Error('two days expected');
    const apart = [person('ada', { days: [monday] }), person('bo', { days: [tuesday] })];
    expect(overDaysInARow(week([visit], apart), [], visit)).toBeNull();
  });

  it('goes with whoever has what is wished for, then with whoever is ready first', () => {
    const visit = cascade(720, { wishes: ['course'] });
    const later = person('bo').days.map((one) => ({ ...one, isAbsent: one.date === MONDAY }));
    const skills = ['gas', 'course'].map((code) => ({ code, validFrom: null, validTo: null }));
    const split = (bo: Partial<Technician>) =>
      told(overDaysInARow(week([visit], [person('ada'), person('bo', { days: later, ...bo })]), [], visit))?.[0]?.[0];
    expect(split({ skills })).toBe('bo');
    expect(split({})).toBe('ada');
  });

  it('is in time when its last day is', () => {
    const visit = cascade(720, { deadline: FRIDAY, deadlineKind: 'warranty', dueTo: MONDAY });
    const parts = overDaysInARow(week([visit], [person('ada')]), [], visit);
    expect(parts?.map(({ deadline, dueTo }) => [deadline, dueTo])).toEqual([
      [null, null],
      [FRIDAY, MONDAY],
    ]);
  });

  it('is planned as it was split, in order, all of the work and no more, with everything else around it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 451, max: 1300 }),
        fc.constantFrom(1, 15),
        fc.integer({ min: 1, max: 1000 }),
        (durationMin, grainMin, seed) => {
          const visit = cascade(durationMin);
          const others = ['a', 'b', 'c', 'd'].map((visitId) => sampleVisit(visitId, { placeId: 'east' }));
          const problem = week([visit, ...others], [person('ada'), person('bo')], grainMin);
          const parts = overDaysInARow(problem, [], visit);
          if (parts === null) throw new Error('two people have three free days each');
          expect(parts.reduce((sum, part) => sum + part.durationMin, 0)).toBe(durationMin);
          expect(new Set(parts.map(({ pin }) => pin.technicianId)).size).toBe(1);
          expect(parts.map(({ pin }) => pin.date)).toEqual([MONDAY, TUESDAY, WEDNESDAY].slice(0, parts.length));
          const split = { ...problem, visits: [...others, ...parts] };
          const { plan } = buildPlan(split, { seed, maxRounds: 20 });
          expect(checkPlan(split, plan)).toEqual([]);
          const placed = placementsOf(plan);
          for (const { visitId, pin } of parts) expect(placed.get(visitId)).toEqual(pin);
        },
      ),
      { numRuns: 30 },
    );
  });
});
