/**
 * What the search works on: numbered visits, routes and places in flat arrays. A route is one technician's day; where a
 * visit may go and what that costs in goals S2–S4 is worked out beforehand as its options, so that the search only has to
 * mind time, travel and the order of visits. Knows nothing of licences, customers or calendars; published routing
 * instances fit it as well, which is how it is measured.
 */
export type RoutingModel = {
  /** Stays included. */
  readonly visitCount: number;
  /** Visits from this number on are stays: they are where they are in every state, in the order of their numbers. */
  readonly firstStay: number;
  readonly routeCount: number;
  readonly placeCount: number;
  readonly technicianCount: number;
  /** From place × placeCount + to place. */
  readonly travel: Int32Array;
  readonly visitPlace: Int32Array;
  readonly duration: Int32Array;
  /** Work that goes on after a short closed span. */
  readonly mayPause: Uint8Array;
  /** Against the route's capacity; zero where nothing is carried. */
  readonly load: Int32Array;
  readonly routeHome: Int32Array;
  readonly routeStart: Int32Array;
  readonly routeEnd: Int32Array;
  readonly routeOrdinaryEnd: Int32Array;
  readonly routeCapacity: Int32Array;
  readonly routeDay: Int32Array;
  readonly routeTechnician: Int32Array;
  /** Routes of one number are interchangeable while empty: only the first is tried. */
  readonly routeKind: Int32Array;
  /** Closed spans of route r: from breakIndex[r] to breakIndex[r + 1]; in order, without overlap. */
  readonly breakIndex: Int32Array;
  readonly breakFrom: Int32Array;
  readonly breakTo: Int32Array;
  /** Options of visit v: from optionIndex[v] to optionIndex[v + 1], by route. */
  readonly optionIndex: Int32Array;
  readonly optionRoute: Int32Array;
  readonly optionFrom: Int32Array;
  readonly optionTo: Int32Array;
  /** Starts are whole multiples of it. */
  readonly optionGrain: Int32Array;
  /** What a start to the minute costs, as minutes of travel, where the option before is the same on the grain; else 0. */
  readonly optionOffGrain: Float64Array;
  readonly optionS2: Float64Array;
  readonly optionS3: Float64Array;
  readonly optionS4: Float64Array;
  /** Goal W: how many of the visit's wishes are lacking there. */
  readonly optionW: Float64Array;
  /** S2–S4, W and what is off the grain in one number, so far apart that no travel outweighs them: what insertion compares. */
  readonly optionPenalty: Float64Array;
  /** A visit that must be over before this one; −1: none. */
  readonly after: Int32Array;
  /** Visits that wait for v: from dependentIndex[v] to dependentIndex[v + 1]. */
  readonly dependentIndex: Int32Array;
  readonly dependent: Int32Array;
  /** What it costs to leave a visit out. */
  readonly pressing: Int32Array;
  readonly outS1: Float64Array;
  readonly outS2: Float64Array;
  readonly outS3: Float64Array;
  readonly outS4: Float64Array;
  /** Visits that the search may take out again. */
  readonly isMovable: Uint8Array;
  /** Whether goals S6 and S7 count. */
  readonly countsTime: boolean;
};

/** Whether the option after this one is the same without the grain. */
export function isAlsoToTheMinute(model: RoutingModel, option: number): boolean {
  return (model.optionGrain[option] as number) > 1 && (model.optionOffGrain[option + 1] ?? 0) > 0;
}

/** Far apart, yet a sum of one visit's goals stays an exact double. */
export const PENALTY_PER_W = 1024;
export const PENALTY_PER_S4 = 4096;
export const PENALTY_PER_S3 = 3e5;
export const PENALTY_PER_S2 = 2e8;
const MOST_DAYS = 400;
const MOST_S2 = 4e7;
const MOST_W = 3;

export function penaltyOf(s2: number, s3: number, s4: number, w: number): number {
  return (
    Math.min(s2, MOST_S2) * PENALTY_PER_S2 +
    Math.min(s3, MOST_DAYS) * PENALTY_PER_S3 +
    Math.min(s4, 65) * PENALTY_PER_S4 +
    Math.min(w, MOST_W) * PENALTY_PER_W
  );
}
