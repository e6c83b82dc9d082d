/** Travel minutes between all places of a problem: reckoned from coordinates, or taken from a table of the firm's own. */
import { err, ok, type Result } from '../result.ts';
import type { Place, TravelMatrix } from './planningProblem.ts';
import { type TravelSettings, travelMinutes } from './travel.ts';

/** Common practice: about the usual way between two jobs in town and country. Only for places that are not on the map. */
export const UNKNOWN_WAY_MIN = 25;

export function travelFromCoordinates(places: readonly Place[], settings: TravelSettings): TravelMatrix {
  return {
    minutes: places.map((from) =>
      places.map((to) =>
        from.placeId === to.placeId ? 0 : (travelMinutes(from.at, to.at, settings) ?? UNKNOWN_WAY_MIN),
      ),
    ),
  };
}

export type MatrixProblem =
  | { readonly code: 'place-missing'; readonly placeId: string }
  | { readonly code: 'not-whole-minutes'; readonly fromPlaceId: string; readonly toPlaceId: string };

/** Minutes by the ids of two places, one direction each. */
export type TravelTable = ReadonlyMap<string, ReadonlyMap<string, number>>;

export function travelFromTable(places: readonly Place[], table: TravelTable): Result<TravelMatrix, MatrixProblem> {
  const minutes: number[][] = [];
  for (const from of places) {
    const given = table.get(from.placeId);
    if (given === undefined) return err({ code: 'place-missing', placeId: from.placeId });
    const row: number[] = [];
    for (const to of places) {
      const value = from.placeId === to.placeId ? 0 : given.get(to.placeId);
      if (value === undefined) return err({ code: 'place-missing', placeId: to.placeId });
      if (!Number.isInteger(value) || value < 0)
        return err({ code: 'not-whole-minutes', fromPlaceId: from.placeId, toPlaceId: to.placeId });
      row.push(value);
    }
    minutes.push(row);
  }
  return ok({ minutes });
}
