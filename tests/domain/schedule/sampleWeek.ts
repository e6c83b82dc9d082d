/** A small week that tests bend to their purpose: two technicians, two days, places a fixed number of minutes apart. */
import {
  NO_PIN,
  type PlanningProblem,
  type PlanVisit,
  type Technician,
} from '../../../domain/schedule/planningProblem.ts';

export const MONDAY = '2026-06-01';
export const TUESDAY = '2026-06-02';
const PLACES = ['base', 'north', 'east', 'south'] as const;
/** Minutes between any two places. */
export const WAY_MIN = 20;

export function sampleTechnician(technicianId: string, change: Partial<Technician> = {}): Technician {
  return {
    technicianId,
    homePlaceId: 'base',
    skills: [{ code: 'gas', validFrom: null, validTo: null }],
    days: [MONDAY, TUESDAY].map((date) => ({
      date,
      startMin: 480,
      endMin: 1020,
      ordinaryEndMin: 960,
      breaks: [],
      stays: [],
      isAbsent: false,
    })),
    ...change,
  };
}

export function sampleVisit(visitId: string, change: Partial<PlanVisit> = {}): PlanVisit {
  return {
    visitId,
    placeId: 'north',
    durationMin: 120,
    mayPause: false,
    needs: ['gas'],
    wishes: [],
    windows: null,
    dueFrom: null,
    dueTo: null,
    deadline: null,
    deadlineKind: 'none',
    priority: 1,
    pin: NO_PIN,
    promised: null,
    afterVisitId: null,
    state: 'open',
    ...change,
  };
}

export function sampleWeek(
  visits: readonly PlanVisit[],
  technicians: readonly Technician[] = [sampleTechnician('ada')],
): PlanningProblem {
  return {
    places: PLACES.map((placeId) => ({ placeId, at: null })),
    travel: { minutes: PLACES.map((from) => PLACES.map((to) => (from === to ? 0 : WAY_MIN))) },
    technicians,
    visits,
    firstDate: MONDAY,
    lastDate: TUESDAY,
    grainMin: 1,
    safetyMarginDays: 3,
  };
}
