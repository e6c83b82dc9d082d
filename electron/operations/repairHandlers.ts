/** What a repair lists: lockouts with time and outdoor temperature, and parts that were changed. */
import { findFittedPart, findLockout } from '../../db/runs.ts';
import { fittedParts, runLockouts } from '../../db/schema/index.ts';
import { findSite } from '../../db/sites.ts';
import { findVisit } from '../../db/visits.ts';
import { parseTyped } from '../../domain/quantity/parseTyped.ts';
import { actorOf, fail, type Handlers, notFound } from './handler.ts';
import { requireOpenItem, requireWhoDidIt } from './runGuards.ts';
import { dayIn, instantIn } from './today.ts';

export const repairHandlers: Handlers<'visits.addPart' | 'visits.addLockout' | 'visits.removeRow'> = {
  'visits.addPart': (input, context) => {
    const { loaded, step } = requireOpenItem(context.db, input, 'parts');
    const actor = actorOf(context);
    requireWhoDidIt(context.db, loaded, step, input.visitId, actor.staffId);
    const part = loaded.sheet.parts?.find(({ key }) => key === input.partKey);
    if (part === undefined) return fail('no-such-part', { partKey: input.partKey });
    const { visitId, runId, itemKey, partKey, partNumber, serial } = input;
    const fittedPartId = context.write((writer) =>
      writer.insert(fittedParts, {
        applianceId: loaded.job.applianceId,
        visitId,
        runId,
        itemKey,
        partKey,
        partNumber,
        name: part.label,
        serial,
        fittedOn: dayIn(timeZoneOf(context.db, visitId), context.now),
        recordedById: actor.staffId,
        recordedAt: context.now,
      }),
    );
    context.services.changed(['runs', 'appliances']);
    return { fittedPartId };
  },

  'visits.addLockout': (input, context) => {
    requireOpenItem(context.db, input, 'lockouts');
    const happenedAt = instantIn(timeZoneOf(context.db, input.visitId), input.happenedOn, input.happenedAt);
    if (Date.parse(happenedAt) > Date.parse(context.now)) return fail('day-in-future', {});
    const outdoor = readOutdoor(input);
    const lockoutId = context.write((writer) =>
      writer.insert(runLockouts, {
        runId: input.runId,
        itemKey: input.itemKey,
        happenedAt,
        code: input.code,
        ...outdoor,
        byId: actorOf(context).staffId,
        recordedAt: context.now,
      }),
    );
    context.services.changed(['runs']);
    return { lockoutId };
  },

  'visits.removeRow': (input, context) => {
    const { item } = requireOpenItem(context.db, input, 'parts', 'lockouts');
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
    });
    context.services.changed(['runs', 'appliances']);
    return {};
  },
};

/** How cold it was stays as it was typed; nobody knowing is no number. */
function readOutdoor(input: { readonly outdoorText: string | null; readonly outdoorUnit: string }) {
  if (input.outdoorText === null || input.outdoorText.trim() === '')
    return { outdoorTypedText: null, outdoorTypedUnit: null, outdoorC: null };
  const parsed = parseTyped('outdoorC', input.outdoorText, input.outdoorUnit);
  if (!parsed.ok) return fail('cannot-read', { problem: parsed.error });
  const { typedText, unit, valueOwn } = parsed.value;
  return { outdoorTypedText: typedText, outdoorTypedUnit: unit, outdoorC: valueOwn };
}

function timeZoneOf(db: Parameters<typeof findVisit>[0], visitId: string): string {
  const siteId = findVisit(db, visitId)?.siteId;
  return (siteId === undefined ? undefined : findSite(db, siteId)?.timeZone) ?? 'UTC';
}
