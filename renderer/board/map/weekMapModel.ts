/** The visits of a week, or of one of its days, as stops on a map: who goes where in which order, and what is not on it. */
import type { Coordinates } from '../../../domain/schedule/travel.ts';
import { boardStart } from '../../../domain/schedule/wallClock.ts';
import { wayPlaceOf } from '../../../domain/schedule/wayPlace.ts';
import type { BoardTechnician, BoardVisit } from '../../../electron/contract/board.ts';
import { type BoardData, baseOf, leadOf } from '../boardModel.ts';

export type MapStop = {
  readonly visit: BoardVisit;
  readonly at: Coordinates | null;
  readonly startMin: number | null;
  /** Of that person's stops of the day, from 1. */
  readonly order: number;
};

export type MapPerson = {
  readonly staffId: string;
  readonly name: string;
  readonly initials: string;
  /** Where the day begins and ends; null: not on the map. */
  readonly base: Coordinates | null;
  /** Which of the ways to draw somebody is theirs, the same on every day of the week. */
  readonly style: number;
  readonly days: readonly { readonly on: string; readonly stops: readonly MapStop[] }[];
};

export type WeekMapModel = {
  readonly people: readonly MapPerson[];
  /** Nobody goes yet. */
  readonly unmanned: readonly MapStop[];
};

/** `day` null: all of the days. Only people who have something to do on them. */
export function weekMapOf(data: BoardData, days: readonly string[], day: string | null): WeekMapModel {
  const shown = data.visits.filter(({ plannedOn }) => (day === null ? days.includes(plannedOn) : plannedOn === day));
  const byLead = Map.groupBy(shown, (visit) => leadOf(visit)?.staffId ?? null);
  const people = data.technicians.map((technician, style) => toPerson(data, technician, style, byLead));
  const known = new Set(data.technicians.map(({ staffId }) => staffId));
  const unmanned = shown.filter((visit) => !known.has(leadOf(visit)?.staffId ?? ''));
  return { people: people.filter((one) => one.days.length > 0), unmanned: toStops(unmanned) };
}

function toPerson(
  data: BoardData,
  technician: BoardTechnician,
  style: number,
  byLead: ReadonlyMap<string | null, readonly BoardVisit[]>,
): MapPerson {
  const { staffId, name, initials } = technician;
  const byDay = Map.groupBy(byLead.get(staffId) ?? [], ({ plannedOn }) => plannedOn);
  return {
    staffId,
    name,
    initials,
    base: baseOf(data, technician).at,
    style,
    days: [...byDay.keys()].sort().map((on) => ({ on, stops: toStops(byDay.get(on) ?? []) })),
  };
}

/** What has no time yet comes after what has one. */
function toStops(visits: readonly BoardVisit[]): readonly MapStop[] {
  return visits
    .map((visit) => ({ visit, at: wayPlaceOf(visit).at, startMin: boardStart(visit) }))
    .toSorted(
      (a, b) => (a.startMin ?? Number.POSITIVE_INFINITY) - (b.startMin ?? Number.POSITIVE_INFINITY) || compareIds(a, b),
    )
    .map((stop, index) => ({ ...stop, order: index + 1 }));
}

function compareIds(a: { readonly visit: BoardVisit }, b: { readonly visit: BoardVisit }): number {
  return a.visit.visitId < b.visit.visitId ? -1 : 1;
}

/** From the base by each stop that is on the map and home again: the way of one day as a line. */
export function wayOf({ base }: Pick<MapPerson, 'base'>, stops: readonly MapStop[]): readonly Coordinates[] {
  const places = stops.flatMap(({ at }) => (at === null ? [] : [at]));
  if (places.length === 0) return [];
  return base === null ? places : [base, ...places, base];
}
