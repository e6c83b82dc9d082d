/** Travel minutes between all places of a problem: from the firm's own table, reckoned from coordinates, or assumed. */
import type { Place, TravelMatrix } from './planningProblem.ts';
import { type TravelSettings, travelMinutes } from './travel.ts';
import { type TravelTimes, wayMinutes } from './wayMinutes.ts';
import type { WayPlace } from './wayPlace.ts';

/** Common practice: about the usual way between two jobs in town and country. Only where neither table nor map knows. */
export const UNKNOWN_WAY_MIN = 25;

export function travelFromCoordinates(places: readonly Place[], settings: TravelSettings): TravelMatrix {
  return matrixOf(places, (from, to) => travelMinutes(from.at, to.at, settings));
}

/** `ways`: one for each place, in their order. */
export function travelFromTimes(
  places: readonly Place[],
  ways: ReadonlyMap<string, WayPlace>,
  times: TravelTimes,
): TravelMatrix {
  // Names that the table does not have need not be looked up for each pair again.
  const known = new Map(
    places.map(({ placeId, at }) => {
      const names = ways.get(placeId)?.names ?? [];
      return [placeId, { at, names: names.filter((name, index) => index === 0 || times.table.has(name)) }];
    }),
  );
  const nowhere: WayPlace = { at: null, names: [] };
  return matrixOf(places, (from, to) =>
    wayMinutes(known.get(from.placeId) ?? nowhere, known.get(to.placeId) ?? nowhere, times),
  );
}

function matrixOf(places: readonly Place[], way: (from: Place, to: Place) => number | null): TravelMatrix {
  return {
    minutes: places.map((from) =>
      places.map((to) => (from.placeId === to.placeId ? 0 : (way(from, to) ?? UNKNOWN_WAY_MIN))),
    ),
  };
}
