/** What the planner says of one visit: why it is there, why it is nowhere. */
import { describe, expect, it } from 'vitest';
import { buildPlan } from '../../../domain/schedule/buildPlan.ts';
import { explainPlacement } from '../../../domain/schedule/explainPlacement.ts';
import { explainUnplanned } from '../../../domain/schedule/explainUnplanned.ts';
import type { PlanVisit } from '../../../domain/schedule/planningProblem.ts';
import { MONDAY, sampleTechnician, sampleVisit, sampleWeek, TUESDAY } from './sampleWeek.ts';

const control = { seed: 1, maxRounds: 50 };

function ground(change: Partial<PlanVisit>, others: readonly PlanVisit[] = []): string | undefined {
  const problem = sampleWeek(
    [sampleVisit('one', change), ...others],
    [sampleTechnician('ada'), sampleTechnician('bo')],
  );
  const { plan } = buildPlan(problem, control);
  return explainPlacement(problem, plan, 'one')?.ground;
}

describe('explainPlacement', () => {
  it('names the goal that decides', () => {
    expect(ground({ pin: { technicianId: 'ada', date: MONDAY, startMin: null } })).toBe('pinned');
    expect(
      ground({ deadline: MONDAY, deadlineKind: 'warranty', pin: { technicianId: 'ada', date: null, startMin: null } }),
    ).toBe('deadline');
    expect(ground({ dueFrom: TUESDAY, pin: { technicianId: 'ada', date: null, startMin: null } })).toBe('due-window');
    expect(
      ground({
        promised: { date: TUESDAY, fromMin: 600, toMin: 660 },
        pin: { technicianId: 'bo', date: null, startMin: null },
      }),
    ).toBe('promise');
    expect(
      ground({ pin: { technicianId: 'bo', date: null, startMin: null } }, [
        sampleVisit('anchor', { pin: { technicianId: 'bo', date: TUESDAY, startMin: 700 } }),
      ]),
    ).toBe('least-travel');
  });

  it('does not say "in time" of a latest day that has passed', () => {
    const late = { deadline: '2026-01-01', deadlineKind: 'warranty' } as const;
    expect(ground({ ...late, pin: { technicianId: 'ada', date: null, startMin: null } })).toBe('least-late');
  });

  it('shows every technician’s day, with what stands in the way', () => {
    const problem = sampleWeek(
      [sampleVisit('one')],
      [
        sampleTechnician('ada', { skills: [{ code: 'gas', validFrom: null, validTo: MONDAY }] }),
        sampleTechnician('bo', { skills: [] }),
      ],
    );
    const explained = explainPlacement(problem, buildPlan(problem, control).plan, 'one');
    expect(explained?.placement).toMatchObject({ technicianId: 'ada', date: MONDAY });
    expect(explained?.ground).toBe('only-possible-day');
    expect(explained?.days.map((day) => day.verdict)).toMatchObject([
      { code: 'possible', extraTravelMin: 40 },
      { code: 'obstacle', obstacle: { code: 'skill-not-valid', skill: 'gas', validTo: MONDAY } },
      { code: 'obstacle', obstacle: { code: 'skill-missing', skill: 'gas' } },
      { code: 'obstacle', obstacle: { code: 'skill-missing', skill: 'gas' } },
    ]);
  });
});

describe('explainUnplanned', () => {
  const reasonsOf = (visits: readonly PlanVisit[]): unknown => {
    const problem = sampleWeek(visits);
    return explainUnplanned(problem, buildPlan(problem, control).plan, 'one')?.reasons;
  };

  it('says that nobody can, and what keeps whom away', () => {
    expect(reasonsOf([sampleVisit('one', { needs: ['oil'] })])).toEqual([
      {
        code: 'nobody-can',
        isPinned: false,
        obstacles: [{ obstacle: { code: 'skill-missing', skill: 'oil' }, days: 2 }],
      },
    ]);
  });

  it('names the visit a pin clashes with', () => {
    const pin = { technicianId: 'ada', date: MONDAY, startMin: 600 };
    expect(
      reasonsOf([
        sampleVisit('other', { pin: { ...pin, startMin: 540 }, state: 'begun' }),
        sampleVisit('far', { pin: { ...pin, startMin: 900 }, durationMin: 30, state: 'begun' }),
        sampleVisit('one', { pin, priority: 3 }),
      ]),
    ).toEqual([{ code: 'pin-clash', withVisitIds: ['other'] }]);
  });

  it('says when the visit it waits for is not planned either', () => {
    expect(
      reasonsOf([sampleVisit('before', { needs: ['oil'] }), sampleVisit('one', { afterVisitId: 'before' })]),
    ).toEqual([{ code: 'earlier-visit-not-planned', afterVisitId: 'before' }]);
  });

  it('says when days would do but no gap is left', () => {
    const full = [MONDAY, TUESDAY].map((date) =>
      sampleVisit(`all of ${date}`, {
        durationMin: 480,
        priority: 3,
        pin: { technicianId: 'ada', date, startMin: 500 },
      }),
    );
    expect(reasonsOf([...full, sampleVisit('one')])).toEqual([{ code: 'no-gap', candidateDays: 2 }]);
  });
});
