/** What a part or a lockout must be before it is kept: a part of the sheet's list, a time that has been, a temperature that can be read. */
import type { fittedParts, runLockouts } from '../../db/schema/index.ts';
import { findSite } from '../../db/sites.ts';
import { findVisit } from '../../db/visits.ts';
import { parseTyped } from '../../domain/quantity/parseTyped.ts';
import { fail, type HandlerContext } from './handler.ts';
import { type ItemRef, requireOpenItem, requireWhoDidIt } from './runGuards.ts';
import { instantIn } from './today.ts';

/** Whoever fitted or wrote it down, and when; who types it is no matter here. */
type Noted = { readonly byId: string; readonly at: string; readonly on: string };

export function requirePart(
  context: HandlerContext,
  input: ItemRef & { readonly partKey: string; readonly partNumber: string; readonly serial: string | null },
  { byId, at, on }: Noted,
): Omit<typeof fittedParts.$inferInsert, 'id'> {
  const { loaded, step } = requireOpenItem(context, input, 'parts');
  requireWhoDidIt(context.db, loaded, step, input.visitId, byId);
  const part = loaded.sheet.parts?.find(({ key }) => key === input.partKey);
  if (part === undefined) return fail('no-such-part', { partKey: input.partKey });
  const { visitId, runId, itemKey, partKey, partNumber, serial } = input;
  return {
    applianceId: loaded.job.applianceId,
    visitId,
    runId,
    itemKey,
    partKey,
    partNumber,
    name: part.label,
    serial,
    fittedOn: on,
    recordedById: byId,
    recordedAt: at,
  };
}

export function requireLockout(
  context: HandlerContext,
  input: ItemRef & {
    readonly happenedOn: string;
    readonly happenedAt: string;
    readonly code: string | null;
    readonly outdoorText: string | null;
    readonly outdoorUnit: string;
  },
  { byId, at }: Omit<Noted, 'on'>,
): Omit<typeof runLockouts.$inferInsert, 'id'> {
  const { loaded, step } = requireOpenItem(context, input, 'lockouts');
  requireWhoDidIt(context.db, loaded, step, input.visitId, byId);
  const happenedAt = instantIn(siteZoneOf(context, input.visitId), input.happenedOn, input.happenedAt);
  if (Date.parse(happenedAt) > Date.parse(context.now)) return fail('day-in-future', {});
  const { runId, itemKey, code } = input;
  return { runId, itemKey, happenedAt, code, ...readOutdoor(input), byId, recordedAt: at };
}

/** How cold it was stays as it was typed; nobody knowing is no number. */
function readOutdoor(input: { readonly outdoorText: string | null; readonly outdoorUnit: string }) {
  if (input.outdoorText === null || input.outdoorText.trim() === '')
    return { outdoorTypedText: null, outdoorTypedUnit: null, outdoorC: null };
  const parsed = parseTyped('outdoorC', input.outdoorText, input.outdoorUnit);
  if (!parsed.ok) return fail('cannot-read', { problem: parsed.error });
  const { typedText, unit, valueOwn } = parsed.value;
  return { outdoorTypedText: typedText, outdoorTypedUnit: unit, outdoorC: valueOwn };
}

export function siteZoneOf({ db }: Pick<HandlerContext, 'db'>, visitId: string): string {
  const siteId = findVisit(db, visitId)?.siteId;
  return (siteId === undefined ? undefined : findSite(db, siteId)?.timeZone) ?? 'UTC';
}
