/** What accepting a plan did to one visit, and the way back from it. */
import { visits } from '../../db/schema/index.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { type Crew, replaceCrew, requireNotBegun, requireUnchanged } from './bookingHandlers.ts';

export type DoneMove = {
  readonly visitId: string;
  /** As the plan left it. */
  readonly revision: number;
  /** null: the plan booked it. */
  readonly before: { readonly plannedOn: string; readonly startMin: number | null; readonly crew: Crew } | null;
};

/** A visit that the plan booked is cancelled, so that its job waits again; a moved one goes where it was. */
export function takeBackMove(writer: StoreWriter, { visitId, revision, before }: DoneMove): void {
  const visit = requireNotBegun(writer.db, visitId);
  requireUnchanged(writer.db, visit, revision);
  const next = { revision: revision + 1 };
  if (before === null) {
    writer.update(visits, visitId, { ...next, state: 'cancelled', outcomeReason: 'the plan was taken back' });
    return;
  }
  writer.update(visits, visitId, { ...next, plannedOn: before.plannedOn, startMin: before.startMin });
  replaceCrew(writer, visitId, before.crew);
}
