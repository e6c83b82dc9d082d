/** How long a way takes: as the firm's own table says where it has the pair, else by distance and speed. */
import { type TravelSettings, travelMinutes } from './travel.ts';
import { findWay, type TravelTable } from './travelTable.ts';
import type { WayPlace } from './wayPlace.ts';

export type TravelTimes = TravelSettings & { readonly table: TravelTable };

/** null: neither the table nor the map knows it. */
export function wayMinutes(from: WayPlace, to: WayPlace, times: TravelTimes): number | null {
  if (times.table.size > 0) {
    // A town may have a line to itself; from one address to the same there is no way.
    if (from.names[0] !== undefined && from.names[0] === to.names[0]) return 0;
    const minutes = findWay(times.table, from.names, to.names);
    if (minutes !== undefined) return minutes;
  }
  return travelMinutes(from.at, to.at, times);
}
