/**
 * Random planning problems with everything that goes wrong in a real week: overlapping breaks, absences, expired licences,
 * windows of no length, pins that clash, chains of visits, recorded visits that contradict each other, stays that do, summer-time
 * days.
 */
import { addDays, minutesOfDay } from '../../../domain/schedule/dayMinutes.ts';
import {
  NO_PIN,
  type Pin,
  type PlanningProblem,
  type PlanVisit,
  type Skill,
  type Technician,
  type VisitWindow,
  type WorkDay,
} from '../../../domain/schedule/planningProblem.ts';
import { type Random, randomFrom } from '../../catchRate/random.ts';

export type ProblemShape = {
  readonly fewestVisits: number;
  readonly mostVisits: number;
  /** Share of visits with a pin; the default keeps them few. */
  readonly pinShare?: number;
  /** Leaves out what the integer program of the oracle does not model. */
  readonly isForOracle?: boolean;
};

/** Weeks around the change of the clock in a zone that has one, and an ordinary one. */
const FIRST_DAYS = ['2026-03-27', '2026-10-23', '2026-06-01', '2026-12-30'] as const;
export const TEST_ZONE = 'America/Toronto';
const SPRING = '2026-03-08';
const AUTUMN = '2026-11-01';

export function randomProblem(from: number, shape: ProblemShape): PlanningProblem {
  const random = randomFrom(from);
  const isForOracle = shape.isForOracle === true;
  const firstDate = random.chance(0.4) ? random.pick([SPRING, AUTUMN, addDays(SPRING, -1)]) : random.pick(FIRST_DAYS);
  const dates = Array.from({ length: random.whole(1, isForOracle ? 2 : 4) }, (_, day) => addDays(firstDate, day));
  const visitCount = random.whole(shape.fewestVisits, shape.mostVisits);
  const technicianCount = random.whole(1, isForOracle ? 2 : 4);
  const placeCount = random.whole(2, visitCount + 2);
  const places = Array.from({ length: placeCount }, (_, index) => ({
    placeId: `place-${index}`,
    at: { latitude: 43 + random.between(0, 0.5), longitude: -79 + random.between(0, 0.5) },
  }));
  const isAsymmetric = random.chance(0.3);
  const minutes = places.map((a) =>
    places.map((b) => {
      if (a === b) return 0;
      const straight = Math.ceil(Math.hypot(a.at.latitude - b.at.latitude, a.at.longitude - b.at.longitude) * 120);
      return isAsymmetric ? straight + random.whole(0, 25) : straight;
    }),
  );
  const codes = ['gas', 'oil', 'large', 'other'] as const;
  const anyPlace = (): string => `place-${random.whole(0, placeCount - 1)}`;
  const technicians = Array.from(
    { length: technicianCount },
    (_, index): Technician => ({
      technicianId: `tech-${index}`,
      homePlaceId: anyPlace(),
      skills: codes.flatMap((code): Skill[] =>
        random.chance(0.8) ? [{ code, ...randomValidity(random, firstDate) }] : [],
      ),
      days: dates.filter(() => random.chance(0.95)).map((date) => randomDay(random, date)),
    }),
  );
  const visits: PlanVisit[] = [];
  for (let index = 0; index < visitCount; index += 1) {
    const isRecorded = !isForOracle && random.chance(0.06);
    const pin = isRecorded
      ? fullPin(random, technicians, dates)
      : randomPin(random, technicians, dates, shape.pinShare ?? 0.15);
    const earlier = visits.length > 0 ? random.whole(0, visits.length - 1) : 0;
    visits.push({
      visitId: `visit-${index}`,
      placeId: anyPlace(),
      durationMin: random.pick([15, 30, 45, 60, 90, 120, 240, 300]),
      mayPause: random.chance(isForOracle ? 0.2 : 0.4),
      needs: codes.filter(() => random.chance(0.08)),
      wishes: [],
      windows: random.chance(0.5) ? null : randomWindows(random, dates),
      dueFrom: random.chance(0.2) ? addDays(firstDate, random.whole(-5, 5)) : null,
      dueTo: random.chance(0.3) ? addDays(firstDate, random.whole(-5, 8)) : null,
      deadline: random.chance(0.4) ? addDays(firstDate, random.whole(-3, 10)) : null,
      deadlineKind: random.pick(['warranty', 'service', 'none']),
      priority: random.pick([0, 1, 2, 3]),
      pin,
      promised: random.chance(0.3) ? randomWindow(random, random.pick(dates as [string, ...string[]])) : null,
      afterVisitId: !isForOracle && visits.length > 0 && random.chance(0.15) ? `visit-${earlier}` : null,
      state: isRecorded ? random.pick(['begun', 'finished', 'signed']) : 'open',
    });
  }
  if (!isForOracle && visitCount > 2 && random.chance(0.03)) {
    // Two visits that wait for each other: neither can be planned, and that is said.
    const [first, second] = visits;
    if (first !== undefined && second !== undefined) {
      visits[0] = { ...first, afterVisitId: second.visitId };
      visits[1] = { ...second, afterVisitId: first.visitId };
    }
  }
  const problem = {
    places,
    travel: { minutes },
    technicians,
    visits,
    firstDate,
    lastDate: dates.at(-1) ?? firstDate,
    grainMin: 1,
    safetyMarginDays: random.whole(0, 5),
  };
  if (isForOracle) return { ...problem, visits: withWishes(random, visits, codes) };
  const grown = {
    ...problem,
    technicians: withStays(random, technicians, anyPlace),
    grainMin: random.pick([1, 1, 5, 15]),
  };
  return { ...grown, visits: withWishes(random, visits, codes) };
}

/** Drawn last as well. */
function withWishes(random: Random, visits: readonly PlanVisit[], codes: readonly string[]): readonly PlanVisit[] {
  return visits.map((visit) => ({ ...visit, wishes: codes.filter(() => random.chance(0.15)) }));
}

function randomValidity(random: Random, firstDate: string): { validFrom: string | null; validTo: string | null } {
  return {
    validFrom: random.chance(0.2) ? addDays(firstDate, random.whole(-3, 2)) : null,
    validTo: random.chance(0.3) ? addDays(firstDate, random.whole(-2, 4)) : null,
  };
}

function randomDay(random: Random, date: string): WorkDay {
  const dayMin = minutesOfDay(date, TEST_ZONE);
  const startMin = random.pick([360, 420, 480, 540]);
  const endMin = Math.min(dayMin, startMin + random.pick([300, 480, 540, 660]));
  const breaks = random.chance(0.4)
    ? Array.from({ length: random.whole(1, 3) }, () => {
        const fromMin = random.whole(startMin - 30, endMin);
        return { fromMin, toMin: fromMin + random.pick([0, 15, 30, 60, 180]) };
      })
    : [];
  return {
    date,
    startMin,
    endMin,
    ordinaryEndMin: endMin - random.pick([0, 0, 60]),
    breaks,
    stays: [],
    isAbsent: random.chance(0.1),
  };
}

/** Drawn last, so that problems of the same number are else the same as without them. */
function withStays(random: Random, technicians: readonly Technician[], anyPlace: () => string): readonly Technician[] {
  return technicians.map((technician) => ({
    ...technician,
    days: technician.days.map((day) => ({
      ...day,
      stays: random.chance(0.25)
        ? Array.from({ length: random.whole(1, 3) }, (_, index) => {
            const fromMin = random.whole(day.startMin - 60, day.endMin + 30);
            const toMin = fromMin + random.pick([0, 30, 60, 120, 240]);
            return { visitId: `stay-${index}`, placeId: anyPlace(), fromMin, toMin };
          })
        : [],
    })),
  }));
}

function randomWindow(random: Random, date: string): VisitWindow {
  const fromMin = random.whole(360, 960);
  return { date, fromMin, toMin: fromMin + random.pick([0, 0, 60, 120, 240]) };
}

function randomWindows(random: Random, dates: readonly string[]): readonly VisitWindow[] {
  return dates
    .filter(() => random.chance(0.7))
    .flatMap((date) => Array.from({ length: random.whole(1, 2) }, () => randomWindow(random, date)));
}

function randomPin(random: Random, technicians: readonly Technician[], dates: readonly string[], share: number): Pin {
  if (!random.chance(share)) return NO_PIN;
  const full = fullPin(random, technicians, dates);
  return {
    technicianId: random.chance(0.6) ? (random.chance(0.05) ? 'tech-nobody' : full.technicianId) : null,
    date: random.chance(0.6) ? (random.chance(0.05) ? '2031-01-01' : full.date) : null,
    startMin: random.chance(0.5) ? full.startMin : null,
  };
}

function fullPin(random: Random, technicians: readonly Technician[], dates: readonly string[]): Pin {
  return {
    technicianId: technicians[random.whole(0, technicians.length - 1)]?.technicianId ?? null,
    date: dates[random.whole(0, dates.length - 1)] ?? null,
    startMin: random.whole(24, 64) * 15,
  };
}
