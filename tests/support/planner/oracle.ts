/**
 * The proven optimum of a small problem: every feasible round of each technician's day is listed by trying every order,
 * then an integer program (HiGHS) picks rounds, one goal after the other from S1 to S4, W and S5. Shares nothing with the solver.
 */
import { countScore } from '../../../domain/schedule/check/countScore.ts';
import { closedSpans, finishOf, freeMinutes } from '../../../domain/schedule/check/freeTime.ts';
import { LATE_BASE, type Stop, UNPLANNED_BASE } from '../../../domain/schedule/plan.ts';
import type {
  PlanningProblem,
  PlanVisit,
  Technician,
  TimeSpan,
  WorkDay,
} from '../../../domain/schedule/planningProblem.ts';

/** S1 to S4, W and S5 of the best plan there is. */
export type Optimum = readonly [number, number, number, number, number, number];

/** What a round changes in each of the parts of the goals, against nothing planned. */
type Round = { readonly visits: ReadonlySet<number>; readonly day: number; readonly parts: readonly number[] };

export type Oracle = { readonly solve: (problem: PlanningProblem) => Optimum };

const CLASSES = 5;
const PROMISES = CLASSES + 3;

type Highs = {
  readonly solve: (
    model: string,
    options: Readonly<Record<string, boolean | number>>,
  ) => { readonly Status: string; readonly ObjectiveValue: number };
};

export async function openOracle(): Promise<Oracle> {
  // The package's types describe its CommonJS form, while an import gets the other one.
  const loaded: unknown = await import('highs');
  const highs = await (loaded as { readonly default: () => Promise<Highs> }).default();
  return {
    solve(problem) {
      const rounds = listRounds(problem);
      const nothing = partsOf(countScore(problem, { routes: [] }));
      const limits: string[] = [];
      const best = nothing.map((start, part) => {
        const terms = rounds.flatMap((round, index) => {
          const factor = round.parts[part] ?? 0;
          return factor === 0 ? [] : [`${factor < 0 ? '-' : '+'} ${Math.abs(factor)} r${index}`];
        });
        if (terms.length === 0) return start;
        const value = minimise(highs, problem, rounds, terms.join(' '), limits);
        limits.push(` p${part}: ${terms.join(' ')} <= ${value}`);
        return start + value;
      });
      const unplanned = best.slice(0, CLASSES).reduce((sum, count) => sum * UNPLANNED_BASE + count, 0);
      const [late = 0, close = 0, outside = 0, moved = 0, lacking = 0, travel = 0] = best.slice(CLASSES);
      return [unplanned, late * LATE_BASE + close, outside, moved, lacking, travel];
    },
  };
}

/** Goals in parts small enough for a solver in floating point: five counts of S1, late and close days of S2, S3, S4, W, S5. */
function partsOf(score: readonly number[]): readonly number[] {
  const [s1 = 0, s2 = 0, s3 = 0, s4 = 0, w = 0, s5 = 0] = score;
  const counts = Array.from({ length: CLASSES }, (_, index) => {
    const base = UNPLANNED_BASE ** (CLASSES - 1 - index);
    return Math.floor(s1 / base) % UNPLANNED_BASE;
  });
  return [...counts, Math.floor(s2 / LATE_BASE), s2 % LATE_BASE, s3, s4, w, s5];
}

function minimise(
  highs: Highs,
  problem: PlanningProblem,
  rounds: readonly Round[],
  terms: string,
  limits: readonly string[],
): number {
  const named = (isMeant: (round: Round) => boolean): string =>
    rounds.flatMap((round, index) => (isMeant(round) ? [`r${index}`] : [])).join(' + ');
  const once = [
    ...problem.visits.map(
      (_, visit) => ` v${visit}: 0 r0 + ${named((round) => round.visits.has(visit)) || '0 r0'} <= 1`,
    ),
    ...[...new Set(rounds.map((round) => round.day))].map(
      (day) => ` d${day}: ${named((round) => round.day === day)} <= 1`,
    ),
  ];
  const binaries = rounds.map((_, index) => `r${index}`).join(' ');
  const text = ['Minimize', ` obj: ${terms}`, 'Subject To', ...once, ...limits, 'Binary', ` ${binaries}`, 'End'];
  const solution = highs.solve(text.join('\n'), { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0.4 });
  if (solution.Status !== 'Optimal') throw new Error(`the integer program ended ${solution.Status}`);
  return Math.round(solution.ObjectiveValue);
}

/** For each technician's day and set of visits, the orders that can be driven; per set the shortest for each S4. */
function listRounds(problem: PlanningProblem): readonly Round[] {
  const nothing = partsOf(countScore(problem, { routes: [] }));
  const days = problem.technicians.flatMap((technician) =>
    technician.days.filter((day) => !day.isAbsent).map((day) => ({ technician, day })),
  );
  return days.flatMap(({ technician, day }, number) => roundsOfDay(problem, technician, day, number, nothing));
}

function roundsOfDay(
  problem: PlanningProblem,
  technician: Technician,
  day: WorkDay,
  number: number,
  nothing: readonly number[],
): readonly Round[] {
  const best = new Map<string, Round>();
  const closed = closedSpans(day);
  const index = new Map(problem.places.map((place, at) => [place.placeId, at]));
  const travel = (from: string, to: string): number =>
    problem.travel.minutes[index.get(from) ?? -1]?.[index.get(to) ?? -1] ?? Number.NaN;
  const open = problem.visits.map((visit) => mayTake(visit, technician, day));
  const home = technician.homePlaceId;
  const extend = (stops: readonly Stop[], used: readonly number[], placeId: string): void => {
    for (const [at, visit] of problem.visits.entries()) {
      if (open[at] !== true || used.includes(at)) continue;
      const leg = travel(placeId, visit.placeId);
      const back = travel(visit.placeId, home);
      // As early as it goes, and as early as it goes within what was promised: later starts never help S1 to S4, W or S5.
      for (const from of startsToTry(visit, day)) {
        const leftMin = stops.at(-1)?.endMin ?? day.startMin;
        const startMin = firstStart(visit, day, closed, Math.max(from, leftMin), leftMin, leg, back);
        if (startMin === null) continue;
        const endMin = finishOf(closed, startMin, visit) ?? Number.NaN;
        const order = [...stops, { visitId: visit.visitId, arriveMin: startMin, startMin, endMin }];
        const visits = [...used, at];
        const route = { technicianId: technician.technicianId, date: day.date, stops: order };
        const parts = partsOf(countScore(problem, { routes: [route] })).map(
          (value, part) => value - (nothing[part] ?? 0),
        );
        const key = `${visits.toSorted((a, b) => a - b).join(' ')} / ${parts[PROMISES]}`;
        const known = best.get(key);
        if (known === undefined || (parts.at(-1) ?? 0) < (known.parts.at(-1) ?? 0))
          best.set(key, { visits: new Set(visits), day: number, parts });
        extend(order, visits, visit.placeId);
      }
    }
  };
  extend([], [], home);
  return [...best.values()];
}

function mayTake({ pin, needs }: PlanVisit, technician: Technician, day: WorkDay): boolean {
  if (pin.technicianId !== null && pin.technicianId !== technician.technicianId) return false;
  if (pin.date !== null && pin.date !== day.date) return false;
  return needs.every((code) =>
    technician.skills.some(
      (skill) =>
        skill.code === code && (skill.validFrom ?? day.date) <= day.date && day.date <= (skill.validTo ?? day.date),
    ),
  );
}

function startsToTry({ promised }: PlanVisit, day: WorkDay): readonly number[] {
  return promised?.date === day.date ? [day.startMin, promised.fromMin] : [day.startMin];
}

function firstStart(
  visit: PlanVisit,
  day: WorkDay,
  closed: readonly TimeSpan[],
  fromMin: number,
  leftMin: number,
  legMin: number,
  backMin: number,
): number | null {
  const windows = visit.windows?.filter((window) => window.date === day.date) ?? null;
  const { durationMin, pin } = visit;
  for (let start = Math.max(fromMin, day.startMin); start + durationMin + backMin <= day.endMin; start += 1) {
    if (pin.startMin !== null && pin.startMin !== start) continue;
    if (windows !== null && !windows.some((one) => one.fromMin <= start && start <= one.toMin)) continue;
    const finish = finishOf(closed, start, visit);
    if (finish === null || freeMinutes(closed, leftMin, start) < legMin) continue;
    return freeMinutes(closed, finish, day.endMin) >= backMin ? start : null;
  }
  return null;
}
