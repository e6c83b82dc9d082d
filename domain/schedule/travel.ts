/**
 * Travel time without a network: great-circle distance, stretched to the road and driven at one speed.
 *
 * Formula  haversine, d = 2R·asin √(sin²(Δφ/2) + cos φ1 · cos φ2 · sin²(Δλ/2)); minutes = d × road factor ÷ speed × 60, rounded up
 * Units    degrees in, kilometres and whole minutes out
 * Valid    any two places on the globe; a place without coordinates has no travel time
 * Source   R. W. Sinnott, "Virtues of the Haversine", Sky and Telescope 68 (1984); mean Earth radius 6371.0088 km (IUGG)
 * Checked  tests/domain/schedule/travel.test.ts
 */

export type Coordinates = { readonly latitude: number; readonly longitude: number };
export type TravelSettings = { readonly roadFactor: number; readonly speedKmPerH: number };

/** Common practice: roads are about a third longer than the straight line; 40 km/h door to door in town and country. */
export const USUAL_TRAVEL: TravelSettings = { roadFactor: 1.3, speedKmPerH: 40 };

const MEAN_EARTH_RADIUS_KM = 6371.0088;

export function distanceKm(from: Coordinates, to: Coordinates): number {
  const [phi1, phi2] = [radians(from.latitude), radians(to.latitude)];
  const halfPhi = (phi2 - phi1) / 2;
  const halfLambda = radians(to.longitude - from.longitude) / 2;
  const chord = Math.sin(halfPhi) ** 2 + Math.cos(phi1) * Math.cos(phi2) * Math.sin(halfLambda) ** 2;
  // Rounding may push opposite ends of the globe a hair above 1.
  return 2 * MEAN_EARTH_RADIUS_KM * Math.asin(Math.min(1, Math.sqrt(chord)));
}

/** null: one of the places is not on the map. */
export function travelMinutes(
  from: Coordinates | null,
  to: Coordinates | null,
  { roadFactor, speedKmPerH }: TravelSettings,
): number | null {
  if (from === null || to === null) return null;
  return Math.ceil(((distanceKm(from, to) * roadFactor) / speedKmPerH) * 60);
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}
