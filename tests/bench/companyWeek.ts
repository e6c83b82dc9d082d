/** An invented company's week for the planner: technicians over a town and its country, visits with windows, skills and days. */
import { addDays } from '../../domain/schedule/dayMinutes.ts';
import {
  NO_PIN,
  type PlanningProblem,
  type PlanVisit,
  type Technician,
} from '../../domain/schedule/planningProblem.ts';
import { START_GRAIN_MIN } from '../../domain/schedule/startGrain.ts';
import { travelFromCoordinates } from '../../domain/schedule/travelMatrix.ts';
import { randomFrom } from '../catchRate/random.ts';

const MONDAY = '2026-06-01';

export function companyWeek(
  seed: number,
  size: { readonly technicians: number; readonly visits: number; readonly days: number },
): PlanningProblem {
  const random = randomFrom(seed);
  const dates = Array.from({ length: size.days }, (_, day) => addDays(MONDAY, day));
  // Some 50 km across.
  const somewhere = () => ({ latitude: 44.6 + random.between(0, 0.45), longitude: -63.6 + random.between(0, 0.6) });
  const homes = Array.from({ length: size.technicians }, (_, index) => ({ placeId: `home-${index}`, at: somewhere() }));
  const sites = Array.from({ length: size.visits }, (_, index) => ({ placeId: `site-${index}`, at: somewhere() }));
  const places = [...homes, ...sites];
  const technicians = homes.map(
    ({ placeId }, index): Technician => ({
      technicianId: `technician-${index}`,
      homePlaceId: placeId,
      skills: ['gas', ...(random.chance(0.4) ? ['large'] : [])].map((code) => ({
        code,
        validFrom: null,
        validTo: null,
      })),
      days: dates.map((date) => ({
        date,
        startMin: 480,
        endMin: 1050,
        ordinaryEndMin: 1020,
        breaks: [{ fromMin: 720, toMin: 750 }],
        stays: [],
        isAbsent: random.chance(0.04),
      })),
    }),
  );
  const visits = sites.map(({ placeId }, index): PlanVisit => {
    const isStartup = random.chance(0.25);
    const date = random.pick(dates as [string, ...string[]]);
    return {
      visitId: `visit-${index}`,
      placeId,
      durationMin: isStartup ? random.pick([150, 180, 210]) : random.pick([45, 60, 75, 90]),
      mayPause: false,
      needs: random.chance(0.15) ? ['gas', 'large'] : ['gas'],
      wishes: [],
      windows: random.chance(0.3)
        ? [random.chance(0.5) ? { date, fromMin: 480, toMin: 720 } : { date, fromMin: 720, toMin: 960 }]
        : null,
      dueFrom: null,
      dueTo: random.chance(0.3) ? addDays(MONDAY, random.whole(0, size.days + 5)) : null,
      deadline: random.chance(0.2) ? addDays(MONDAY, random.whole(2, size.days + 10)) : null,
      deadlineKind: isStartup ? 'warranty' : 'service',
      priority: isStartup ? 2 : 1,
      pin: NO_PIN,
      promised: null,
      afterVisitId: null,
      state: 'open',
    };
  });
  return {
    places,
    travel: travelFromCoordinates(places, { roadFactor: 1.3, speedKmPerH: 45 }),
    technicians,
    visits,
    firstDate: MONDAY,
    lastDate: dates.at(-1) ?? MONDAY,
    grainMin: START_GRAIN_MIN,
    safetyMarginDays: 3,
  };
}
