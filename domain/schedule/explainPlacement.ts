/** Why a visit is where the plan has it: which goal speaks for that technician and day against every other one. */
import { type DayVerdict, judgeDays } from './judgeDays.ts';
import { type Placement, type Plan, placementsOf } from './plan.ts';
import { isFixed, type PlanningProblem } from './planningProblem.ts';

export const PLACEMENT_GROUNDS = [
  'recorded',
  'pinned',
  /** Longer than a day: the first days in a row on which one person can do it, chosen before the rest was planned. */
  'days-in-a-row',
  'only-possible-day',
  'deadline',
  /** Its latest day cannot be kept, and every other place is later still. */
  'least-late',
  'due-window',
  'promise',
  /** Whoever goes has the course or the instrument that others lack. */
  'qualified',
  'least-travel',
  /** Another day would suit this visit alone better; the others keep it from there. */
  'best-for-the-whole',
] as const;
export type PlacementGround = (typeof PLACEMENT_GROUNDS)[number];

export type PlacementExplained = {
  readonly placement: Placement;
  readonly ground: PlacementGround;
  readonly extraTravelMin: number | null;
  readonly days: readonly DayVerdict[];
};

/** null: the visit is not in the plan. */
export function explainPlacement(
  problem: PlanningProblem,
  plan: Pick<Plan, 'routes'>,
  visitId: string,
): PlacementExplained | null {
  const placement = placementsOf(plan).get(visitId);
  const visit = problem.visits.find((one) => one.visitId === visitId);
  if (placement === undefined || visit === undefined) return null;
  const days = judgeDays(problem, plan, visitId);
  const isHere = (day: DayVerdict): boolean =>
    day.technicianId === placement.technicianId && day.date === placement.date;
  const here = possible(days.find(isHere));
  const others = days.filter((day) => !isHere(day)).flatMap((day) => possible(day) ?? []);
  const extraTravelMin = here?.extraTravelMin ?? null;
  const isLate = visit.deadline !== null && placement.date > visit.deadline;
  const ground = (): PlacementGround => {
    if (isFixed(visit)) return 'recorded';
    if (visit.pin.technicianId !== null && visit.pin.date !== null) return 'pinned';
    if (others.length === 0) return 'only-possible-day';
    if (here === null) return 'best-for-the-whole';
    const goals: readonly (readonly [PlacementGround, keyof Possible])[] = [
      ['deadline', 'daysLateKey'],
      ['due-window', 'daysOutside'],
      ['promise', 'promisesMoved'],
      ['qualified', 'wishesLacking'],
      ['least-travel', 'extraTravelMin'],
    ];
    let rivals = others;
    for (const [name, goal] of goals) {
      if (rivals.some((rival) => rival[goal] < here[goal])) return 'best-for-the-whole';
      rivals = rivals.filter((rival) => rival[goal] === here[goal]);
      if (rivals.length === 0) return name === 'deadline' && isLate ? 'least-late' : name;
    }
    return 'least-travel';
  };
  return { placement, ground: ground(), extraTravelMin, days };
}

type Possible = {
  readonly daysLateKey: number;
  readonly daysOutside: number;
  readonly promisesMoved: number;
  readonly wishesLacking: number;
  readonly extraTravelMin: number;
};

function possible(day: DayVerdict | undefined): Possible | null {
  return day?.verdict.code === 'possible' ? day.verdict : null;
}
