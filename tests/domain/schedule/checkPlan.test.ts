/** One breach per hard rule, planted by hand: the checker names each, and finds nothing wrong with the plan they are planted in. */
import { describe, expect, it } from 'vitest';
import { checkPlan } from '../../../domain/schedule/check/checkPlan.ts';
import { checkRoutes } from '../../../domain/schedule/check/checkRoutes.ts';
import { countScore } from '../../../domain/schedule/check/countScore.ts';
import { LATE_BASE, type Plan, type Route, UNPLANNED_BASE } from '../../../domain/schedule/plan.ts';
import type { PlanningProblem, PlanVisit, Stay, Technician } from '../../../domain/schedule/planningProblem.ts';
import { MONDAY, sampleTechnician, sampleVisit, sampleWeek, TUESDAY } from './sampleWeek.ts';

const good: readonly Route[] = [
  {
    technicianId: 'ada',
    date: MONDAY,
    stops: [
      { visitId: 'first', arriveMin: 500, startMin: 500, endMin: 620 },
      { visitId: 'second', arriveMin: 640, startMin: 640, endMin: 760 },
    ],
  },
];

function week(change: Partial<PlanVisit> = {}, technician: Partial<Technician> = {}): PlanningProblem {
  const visits = [sampleVisit('first', change), sampleVisit('second', { placeId: 'east' })];
  return sampleWeek(visits, [sampleTechnician('ada', technician)]);
}

function codes(problem: PlanningProblem, routes: readonly Route[] = good): readonly string[] {
  return checkRoutes(problem, { routes }).map((violation) => violation.code);
}

function withDay(change: Partial<Technician['days'][number]>): Partial<Technician> {
  return { days: sampleTechnician('ada').days.map((day) => ({ ...day, ...change })) };
}

function shifted(minutes: number): readonly Route[] {
  return good.map((route) => ({
    ...route,
    stops: route.stops.map((stop) => ({
      ...stop,
      arriveMin: stop.arriveMin + minutes,
      startMin: stop.startMin + minutes,
      endMin: stop.endMin + minutes,
    })),
  }));
}

/** South, 20 minutes from everywhere else. */
function stay(fromMin: number, toMin: number): Stay {
  return { visitId: 'elsewhere', placeId: 'south', fromMin, toMin };
}

/** The second visit a minute before one can be there. */
const tooSoon: readonly Route[] = good.map((route) => ({
  ...route,
  stops: route.stops.map((stop) =>
    stop.visitId === 'second' ? { ...stop, arriveMin: 639, startMin: 639, endMin: 759 } : stop,
  ),
}));

describe('checkRoutes', () => {
  it('finds nothing in a plan that keeps every rule', () => {
    expect(codes(week())).toEqual([]);
  });

  it.each<readonly [string, string, PlanningProblem, readonly Route[]]>([
    ['a visit twice', 'visit-twice', week(), [...good, { ...good[0], date: TUESDAY } as Route]],
    ['a skill nobody gave', 'skill-lacking', week({ needs: ['oil'] }), good],
    [
      'a skill that has run out by the day',
      'skill-lacking',
      week({}, { skills: [{ code: 'gas', validFrom: null, validTo: '2026-05-31' }] }),
      good,
    ],
    [
      'a skill that is not valid yet',
      'skill-lacking',
      week({}, { skills: [{ code: 'gas', validFrom: TUESDAY, validTo: null }] }),
      good,
    ],
    [
      'a start outside the window',
      'outside-windows',
      week({ windows: [{ date: MONDAY, fromMin: 501, toMin: 600 }] }),
      good,
    ],
    [
      'the right minute on another day',
      'outside-windows',
      week({ windows: [{ date: TUESDAY, fromMin: 500, toMin: 500 }] }),
      good,
    ],
    ['a way there begun before the hours', 'not-enough-time-to-get-there', week({}, withDay({ startMin: 481 })), good],
    ['home after the hours', 'home-too-late', week({}, withDay({ endMin: 779 })), good],
    ['too little time between two places', 'not-enough-time-to-get-there', week(), tooSoon],
    ['a length that is not the visit’s', 'wrong-times', week({ durationMin: 100 }), good],
    [
      'another technician than pinned',
      'pin-broken',
      week({ pin: { technicianId: 'bo', date: null, startMin: null } }),
      good,
    ],
    [
      'another day than pinned',
      'pin-broken',
      week({ pin: { technicianId: null, date: TUESDAY, startMin: null } }),
      good,
    ],
    ['another start than pinned', 'pin-broken', week({ pin: { technicianId: null, date: null, startMin: 505 } }), good],
    [
      'a visit moved that has begun',
      'fixed-moved',
      week({ state: 'begun', pin: { technicianId: 'ada', date: MONDAY, startMin: 505 } }),
      good,
    ],
    ['work on a break', 'on-a-break', week({}, withDay({ breaks: [{ fromMin: 610, toMin: 615 }] })), good],
    [
      'travel through a break',
      'not-enough-time-to-get-there',
      week({}, withDay({ breaks: [{ fromMin: 625, toMin: 630 }] })),
      good,
    ],
    [
      'too little time to get to where they must be',
      'not-enough-time-to-get-there',
      week({}, withDay({ stays: [stay(779, 900)] })),
      good,
    ],
    [
      'too little time from where they had to be',
      'not-enough-time-to-get-there',
      week({}, withDay({ stays: [stay(400, 481)] })),
      good,
    ],
    ['a visit over the time of another', 'fixed-time-taken', week({}, withDay({ stays: [stay(700, 730)] })), good],
    ['a technician who is absent', 'technician-absent', week({}, withDay({ isAbsent: true })), good],
    ['a visit before the one it waits for', 'before-the-earlier-visit', week({ afterVisitId: 'second' }), good],
  ])('%s is %s', (_name, code, problem, routes) => {
    expect(codes(problem, routes)).toContain(code);
  });

  it('lets the ends touch: the last minute of the hours, the first of a window', () => {
    expect(codes(week({}, withDay({ endMin: 780 })))).toEqual([]);
    expect(codes(week({ windows: [{ date: MONDAY, fromMin: 500, toMin: 500 }] }))).toEqual([]);
    expect(codes(week({}, withDay({ breaks: [{ fromMin: 760, toMin: 800 }] })))).toEqual([]);
    expect(codes(week(), shifted(220))).toEqual([]);
    expect(codes(week(), shifted(221))).toEqual([]);
    expect(codes(week(), shifted(241))).toContain('home-too-late');
    expect(codes(week({}, withDay({ stays: [stay(400, 480), stay(780, 1100)] })))).toEqual([]);
  });
});

describe('checkPlan', () => {
  const planOf = (problem: PlanningProblem, routes: readonly Route[], unplanned: Plan['unplanned'] = []): Plan => ({
    routes,
    unplanned,
    score: countScore(problem, { routes }),
  });

  it('wants every visit accounted for', () => {
    const problem = week();
    expect(checkPlan(problem, planOf(problem, []))).toEqual([
      { code: 'visit-not-accounted', visitId: 'first' },
      { code: 'visit-not-accounted', visitId: 'second' },
    ]);
  });

  it('does not believe a reason that is not true', () => {
    const problem = week();
    const [only] = good;
    const routes = [{ ...only, stops: only?.stops.slice(0, 1) } as Route];
    const leaving = (reasons: Plan['unplanned'][number]['reasons']) =>
      checkPlan(problem, planOf(problem, routes, [{ visitId: 'second', reasons }]));
    expect(leaving([])).toEqual([{ code: 'reason-missing', visitId: 'second' }]);
    for (const code of ['no-gap', 'nobody-can', 'pin-clash', 'fixed-does-not-fit'] as const) {
      const reason = { code, candidateDays: 1, isPinned: false, obstacles: [], withVisitIds: ['first'] };
      expect(leaving([reason])).toEqual([{ code: 'reason-not-confirmed', visitId: 'second' }]);
    }
  });

  it('counts the goals itself', () => {
    const problem = week();
    const plan = planOf(problem, good);
    expect(checkPlan(problem, plan)).toEqual([]);
    expect(checkPlan(problem, { ...plan, score: [0, 0, 0, 0, 0, 59, 0, 0] })[0]?.code).toBe('score-differs');
  });
});

describe('countScore, worked by hand', () => {
  it('counts travel, overtime, waiting and balance', () => {
    const problem = sampleWeek(
      [sampleVisit('first'), sampleVisit('second', { placeId: 'east' })],
      [sampleTechnician('ada'), sampleTechnician('bo')],
    );
    const routes: readonly Route[] = [
      {
        technicianId: 'ada',
        date: MONDAY,
        stops: [
          { visitId: 'first', arriveMin: 500, startMin: 500, endMin: 620 },
          { visitId: 'second', arriveMin: 640, startMin: 870, endMin: 990 },
        ],
      },
    ];
    // Three ways of 20; home at 1010, 50 after ordinary hours; 870 − 640 waited; 60 + 240 of work against none.
    expect(countScore(problem, { routes })).toEqual([0, 0, 0, 0, 0, 60, 280, 300]);
    const [ada, bo] = problem.technicians;
    if (ada === undefined || bo === undefined) throw new Error('two technicians expected');
    const [monday, tuesday] = bo.days;
    if (monday === undefined || tuesday === undefined) throw new Error('two days expected');
    // He must be in the south from 09:00 to 11:00: two ways of 20 more, 40 + 120 of work against hers of 300.
    const stays = [{ visitId: 'elsewhere', placeId: 'south', fromMin: 540, toMin: 660 }];
    const technicians = [ada, { ...bo, days: [{ ...monday, stays }, tuesday] }];
    expect(countScore({ ...problem, technicians }, { routes })).toEqual([0, 0, 0, 0, 0, 100, 280, 140]);
  });

  it('counts each wish that is lacking on the day, and none of a visit that is left out', () => {
    const held = { code: 'course', validFrom: null, validTo: '2026-05-31' };
    const skills = [
      { code: 'gas', validFrom: null, validTo: null },
      { code: 'analyser', validFrom: MONDAY, validTo: MONDAY },
      held,
    ];
    const problem = week({ wishes: ['course', 'analyser', 'another'] }, { skills });
    expect(countScore(problem, { routes: good })[4]).toBe(2);
    expect(countScore(problem, { routes: [] })[4]).toBe(0);
  });

  it('counts what is left out, late, close, outside its window and moved from its promise', () => {
    const problem = sampleWeek([
      sampleVisit('pressing', { priority: 3 }),
      sampleVisit('first', {
        deadline: '2026-05-29',
        deadlineKind: 'warranty',
        dueTo: '2026-05-30',
        promised: { date: MONDAY, fromMin: 510, toMin: 600 },
      }),
      sampleVisit('second', {
        placeId: 'east',
        deadline: '2026-06-02',
        deadlineKind: 'service',
        dueFrom: '2026-06-05',
      }),
    ]);
    // Late by 3 days; close: 1 day to spare of 3; outside: 2 after, 4 before; told 08:30, comes at 08:20.
    expect(countScore(problem, { routes: good })).toEqual([UNPLANNED_BASE ** 3, 3 * LATE_BASE + 2, 6, 1, 0, 60, 0, 0]);
  });
});
