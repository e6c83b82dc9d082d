/** One visit against every technician's day of a plan: what keeps it away, or what it would cost to be there. */
import type { Plan } from './plan.ts';
import type { PlanningProblem } from './planningProblem.ts';
import { closedSpansOf, staysOf } from './solver/fixedVisits.ts';
import { findDayObstacle, travelBetween } from './solver/listOptions.ts';
import { listPositions } from './solver/listPositions.ts';
import { loadAround } from './solver/loadAround.ts';
import type { DayObstacle } from './unplannedReason.ts';

export type DayVerdict = {
  readonly technicianId: string;
  readonly date: string;
  readonly verdict:
    | { readonly code: 'obstacle'; readonly obstacle: DayObstacle }
    | { readonly code: 'other-pin' }
    | { readonly code: 'no-gap' }
    | {
        readonly code: 'possible';
        readonly fromMin: number;
        readonly toMin: number;
        readonly daysLateKey: number;
        readonly daysOutside: number;
        readonly promisesMoved: number;
        readonly wishesLacking: number;
        readonly extraTravelMin: number;
      };
};

/** Everything else staying as planned, the visit itself taken out first. */
export function judgeDays(
  problem: PlanningProblem,
  plan: Pick<Plan, 'routes'>,
  visitId: string,
): readonly DayVerdict[] {
  const routes = plan.routes.map((route) => ({
    ...route,
    stops: route.stops.filter((stop) => stop.visitId !== visitId),
  }));
  const { compiled, loaded } = loadAround(problem, { routes });
  const { model } = compiled;
  const number = compiled.visitNumber.get(visitId);
  const visit = problem.visits.find((one) => one.visitId === visitId);
  if (number === undefined || visit === undefined) return [];
  const positions = listPositions(compiled, loaded.state, number);
  const routeNumber = new Map(
    compiled.routes.map((key, index) => [JSON.stringify([key.technicianId, key.date]), index]),
  );
  const travel = travelBetween(problem);
  return problem.technicians.flatMap((technician) =>
    technician.days.map((day): DayVerdict => {
      const key = { technicianId: technician.technicianId, date: day.date };
      const { pin } = visit;
      if (
        (pin.technicianId !== null && pin.technicianId !== key.technicianId) ||
        (pin.date !== null && pin.date !== key.date)
      )
        return { ...key, verdict: { code: 'other-pin' } };
      const stays = staysOf(problem, technician, day, compiled.contradicted);
      const obstacle = findDayObstacle(travel, visit, { technician, day, closed: closedSpansOf(day), stays });
      if (obstacle !== null) return { ...key, verdict: { code: 'obstacle', obstacle } };
      const route = routeNumber.get(JSON.stringify([key.technicianId, key.date]));
      const [best] = positions
        .filter((one) => one.route === route)
        .sort(
          (a, b) =>
            (model.optionPenalty[a.option] as number) - (model.optionPenalty[b.option] as number) ||
            a.extraTravelMin - b.extraTravelMin ||
            a.fromMin - b.fromMin,
        );
      if (best === undefined) return { ...key, verdict: { code: 'no-gap' } };
      return {
        ...key,
        verdict: {
          code: 'possible',
          fromMin: best.fromMin,
          toMin: best.toMin,
          daysLateKey: model.optionS2[best.option] as number,
          daysOutside: model.optionS3[best.option] as number,
          promisesMoved: model.optionS4[best.option] as number,
          wishesLacking: model.optionW[best.option] as number,
          extraTravelMin: best.extraTravelMin,
        },
      };
    }),
  );
}
