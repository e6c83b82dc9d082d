/** Which visit the arrow keys lead to: along a person's days, or to the one of the next person that lies nearest in time. */
import type { BoardRowModel } from './boardModel.ts';

export type BoardSpot = { readonly staffId: string; readonly visitId: string };

export function firstSpot(rows: readonly BoardRowModel[]): BoardSpot | null {
  for (const row of rows) {
    const first = visitsOf(row)[0];
    if (first !== undefined) return { staffId: row.technician.staffId, visitId: first.visitId };
  }
  return null;
}

export function hasSpot(rows: readonly BoardRowModel[], spot: BoardSpot): boolean {
  const row = rows.find(({ technician }) => technician.staffId === spot.staffId);
  return row !== undefined && visitsOf(row).some(({ visitId }) => visitId === spot.visitId);
}

/** null: the key leads nowhere from here. */
export function findNeighbour(rows: readonly BoardRowModel[], from: BoardSpot, key: string): BoardSpot | null {
  const rowIndex = rows.findIndex(({ technician }) => technician.staffId === from.staffId);
  const row = rows[rowIndex];
  if (row === undefined) return null;
  const visits = visitsOf(row);
  const index = visits.findIndex(({ visitId }) => visitId === from.visitId);
  const here = visits[index];
  const to = (visit: Placed | undefined, staffId = from.staffId): BoardSpot | null =>
    visit === undefined ? null : { staffId, visitId: visit.visitId };
  switch (key) {
    case 'ArrowLeft':
      return to(visits[index - 1]);
    case 'ArrowRight':
      return to(visits[index + 1]);
    case 'Home':
      return to(visits[0]);
    case 'End':
      return to(visits.at(-1));
    case 'ArrowUp':
    case 'ArrowDown': {
      const step = key === 'ArrowUp' ? -1 : 1;
      for (let other = rowIndex + step; other >= 0 && other < rows.length; other += step) {
        const candidate = rows[other];
        if (candidate === undefined || here === undefined) return null;
        const nearest = nearestTo(here, visitsOf(candidate));
        if (nearest !== undefined) return to(nearest, candidate.technician.staffId);
      }
      return null;
    }
    default:
      return null;
  }
}

type Placed = { readonly visitId: string; readonly at: number };

const MINUTES_OF_DAY = 1440;

function visitsOf(row: BoardRowModel): readonly Placed[] {
  return row.days.flatMap((day, index) =>
    day.blocks.map(({ visit, startMin }) => ({ visitId: visit.visitId, at: index * MINUTES_OF_DAY + startMin })),
  );
}

function nearestTo(here: Placed, others: readonly Placed[]): Placed | undefined {
  return others.reduce<Placed | undefined>(
    (best, one) => (best === undefined || Math.abs(one.at - here.at) < Math.abs(best.at - here.at) ? one : best),
    undefined,
  );
}
