/** Courses and instruments in the planner: who must have them goes, who had better have them goes if nothing weightier speaks against it. */
import { describe, expect, it } from 'vitest';
import { buildPlan } from '../../../domain/schedule/buildPlan.ts';
import { checkPlan } from '../../../domain/schedule/check/checkPlan.ts';
import { explainPlacement } from '../../../domain/schedule/explainPlacement.ts';
import { placementsOf } from '../../../domain/schedule/plan.ts';
import type { PlanVisit, Technician } from '../../../domain/schedule/planningProblem.ts';
import { MONDAY, sampleTechnician, sampleVisit, sampleWeek, TUESDAY } from './sampleWeek.ts';

const GAS = { code: 'gas', validFrom: null, validTo: null };
const course = (validFrom: string | null, validTo: string | null) => ({ code: 'training T', validFrom, validTo });
/** The base is where the visits are: without a wish it goes there for nothing. */
const near = (change: Partial<Technician> = {}) => sampleTechnician('near', { homePlaceId: 'north', ...change });
const far = (change: Partial<Technician> = {}) => sampleTechnician('far', { homePlaceId: 'south', ...change });

function plan(visit: Partial<PlanVisit>, technicians: readonly Technician[]) {
  const problem = sampleWeek([sampleVisit('one', visit)], technicians);
  const { plan: found } = buildPlan(problem, { seed: 1, maxRounds: 200 });
  expect(checkPlan(problem, found)).toEqual([]);
  return { problem, found, at: placementsOf(found).get('one') };
}

describe('a wish for a course', () => {
  it('sends who has it on that day from farther away, and says why', () => {
    const { problem, found, at } = plan({ wishes: ['training T'] }, [
      near({ skills: [GAS, course(null, '2026-05-31')] }),
      far({ skills: [GAS, course(TUESDAY, null)] }),
    ]);
    expect(at).toMatchObject({ technicianId: 'far', date: TUESDAY });
    expect(found.score[4]).toBe(0);
    expect(explainPlacement(problem, found, 'one')?.ground).toBe('qualified');
  });

  it('keeps nobody from the work, and stands behind a promise', () => {
    expect(plan({ wishes: ['training T'] }, [near()]).found.score[4]).toBe(1);
    const promised = { date: MONDAY, fromMin: 480, toMin: 1000 };
    const { at } = plan({ wishes: ['training T'], promised }, [near(), far({ skills: [GAS, course(TUESDAY, null)] })]);
    expect(at).toMatchObject({ technicianId: 'near', date: MONDAY });
  });

  it('is a must where it is demanded: then the visit waits', () => {
    const { found } = plan({ needs: ['gas', 'training T'] }, [
      near(),
      far({ skills: [GAS, course(null, '2026-05-31')] }),
    ]);
    expect(found.unplanned).toEqual([
      {
        visitId: 'one',
        reasons: [
          {
            code: 'nobody-can',
            isPinned: false,
            obstacles: [
              { obstacle: { code: 'skill-missing', skill: 'training T' }, days: 2 },
              { obstacle: { code: 'skill-not-valid', skill: 'training T', validTo: '2026-05-31' }, days: 2 },
            ],
          },
        ],
      },
    ]);
  });
});
