/**
 * Travel minutes between places without a network: straight-line distance × road factor ÷ speed, in whole minutes, up.
 *
 * Formula  haversine, d = 2R·asin √(sin²(Δφ/2) + cos φ₁ cos φ₂ sin²(Δλ/2))
 * Units    degrees in, km between, minutes out
 * Source   R = 6371.0088 km, mean earth radius R₁ of GRS 80 (Moritz 2000, J. Geodesy 74, 128); road factor and speed are
 *          settings of the firm, their defaults common practice
 */
import { err, ok, type Result } from '../../result.ts';
import type { Place, TravelMatrix } from '../planningProblem.ts';

const MEAN_EARTH_RADIUS_KM = 6371.0088;

export type TravelSettings = {
  /** Road kilometres per kilometre as the crow flies. */
  readonly roadFactor: number;
  readonly speedKmPerH: number;
};

/** Common practice for small towns and country roads; no source. */
export const DEFAULT_TRAVEL: TravelSettings = { roadFactor: 1.3, speedKmPerH: 45 };

export function straightLineKm(from: Place, to: Place): number {
  const rad = Math.PI / 180;
  const sinLat = Math.sin(((to.lat - from.lat) * rad) / 2);
  const sinLon = Math.sin(((to.lon - from.lon) * rad) / 2);
  const h = sinLat * sinLat + Math.cos(from.lat * rad) * Math.cos(to.lat * rad) * sinLon * sinLon;
  return 2 * MEAN_EARTH_RADIUS_KM * Math.asin(Math.min(1, Math.sqrt(h)));
}

export function travelFromCoordinates(places: readonly Place[], settings: TravelSettings): TravelMatrix {
  const minutesPerKm = (settings.roadFactor / settings.speedKmPerH) * 60;
  return {
    minutes: places.map((from) => places.map((to) => Math.ceil(straightLineKm(from, to) * minutesPerKm - 1e-9))),
  };
}

export type MatrixProblem =
  | { readonly code: 'place-missing'; readonly placeId: string }
  | { readonly code: 'not-whole-minutes'; readonly fromPlaceId: string; readonly toPlaceId: string };

/** A table of the firm's own (from a file): minutes by the ids of two places. */
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
