/** What a repair lists: lockouts with time and outdoor temperature, and parts that were changed. */
import { findFittedPart, findLockout, findTranscription } from '../../db/runs.ts';
import { fittedParts, runAnswers, runLockouts, transcriptions } from '../../db/schema/index.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { actorOf, type Handlers, notFound } from './handler.ts';
import { requireLockout, requirePart, siteZoneOf } from './repairRows.ts';
import { requireOpenItem, requireWhoDidIt } from './runGuards.ts';
import { dayIn } from './today.ts';

export const repairHandlers: Handlers<'visits.addPart' | 'visits.addLockout' | 'visits.removeRow'> = {
  'visits.addPart': (input, context) => {
    const actor = actorOf(context);
    const on = dayIn(siteZoneOf(context, input.visitId), context.now);
    const row = requirePart(context, input, { byId: actor.staffId, at: context.now, on });
    const fittedPartId = context.write((writer) => writer.insert(fittedParts, row));
    context.services.changed(['runs', 'appliances']);
    return { fittedPartId };
  },

  'visits.addLockout': (input, context) => {
    const row = requireLockout(context, input, { byId: actorOf(context).staffId, at: context.now });
    const lockoutId = context.write((writer) => writer.insert(runLockouts, row));
    context.services.changed(['runs']);
    return { lockoutId };
  },

  'visits.removeRow': (input, context) => {
    const { loaded, step, item } = requireOpenItem(context, input, 'parts', 'lockouts');
    requireWhoDidIt(context.db, loaded, step, input.visitId, actorOf(context).staffId);
    const isMine = (row: { readonly runId: string | null; readonly itemKey: string | null } | undefined) =>
      row !== undefined && row.runId === input.runId && row.itemKey === input.itemKey;
    context.write((writer) => {
      const removed = { removedAt: context.now };
      if (item.kind === 'parts') {
        if (!isMine(findFittedPart(writer.db, input.rowId))) return notFound('fitted_parts', input.rowId);
        writer.update(fittedParts, input.rowId, removed);
      } else {
        if (!isMine(findLockout(writer.db, input.rowId))) return notFound('run_lockouts', input.rowId);
        writer.update(runLockouts, input.rowId, removed);
      }
      withdrawPaperMark(writer, input.rowId);
    });
    context.services.changed(['runs', 'appliances']);
    return {};
  },
};

/** What was copied from paper and taken away again is not to be listed as copied: the mark has its line's id and goes with it. */
function withdrawPaperMark(writer: StoreWriter, lineId: string): void {
  const mark = findTranscription(writer.db, lineId);
  if (mark === undefined) return;
  writer.remove(transcriptions, mark.id);
  writer.remove(runAnswers, lineId);
}
