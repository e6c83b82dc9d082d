/** Readings as typed, and the one-key suggestions of the judgement. */

import { findStaff, isInstrument } from '../../db/people.ts';
import { findReading, findStandingReadingId } from '../../db/runs.ts';
import { readings } from '../../db/schema/index.ts';
import type { ItemOf } from '../../domain/procedure/modelSheet.ts';
import { entryUnits } from '../../domain/quantity/entryUnits.ts';
import { parseTyped } from '../../domain/quantity/parseTyped.ts';
import { isQuantityKey, type QuantityKey } from '../../domain/quantity/quantities.ts';
import { actorOf, fail, type Handlers, notFound } from './handler.ts';
import { requireOpenItem, requireOpenRun, requireWhoDidIt } from './runGuards.ts';
import { readRunState } from './runState.ts';

export const readingHandlers: Handlers<'visits.recordReading' | 'visits.takeSuggestion'> = {
  'visits.recordReading': (input, context) => {
    const { loaded, step, item } = requireOpenItem(context.db, input, 'read', 'series');
    if (!isQuantityKey(input.quantity) || !takes(item, input.quantity)) {
      return fail('no-such-item', { stepKey: input.stepKey, itemKey: input.itemKey });
    }
    const actor = actorOf(context);
    const measuredById = input.measuredById ?? actor.staffId;
    if (measuredById !== actor.staffId && findStaff(context.db, measuredById) === undefined)
      return notFound('staff', measuredById);
    requireWhoDidIt(context.db, loaded, step, input.visitId, measuredById);
    if (input.instrumentId !== null && !isInstrument(context.db, input.instrumentId)) {
      return notFound('instruments', input.instrumentId);
    }
    const read = readTyped(input.quantity, input);
    const readingId = context.write((writer) => {
      const standingId = findStandingReadingId(writer.db, input);
      const id = writer.insert(readings, {
        runId: input.runId,
        visitId: input.visitId,
        stepKey: input.stepKey,
        itemKey: input.itemKey,
        quantity: input.quantity,
        point: item.kind === 'series' ? item.firingPoint : item.point,
        sample: input.sample,
        ...read,
        instrumentId: input.instrumentId,
        measuredById,
        typedById: actor.staffId,
        measuredAt: context.now,
        typedAt: context.now,
        origin: 'typed',
      });
      if (standingId !== undefined) writer.update(readings, standingId, { supersededById: id });
      return id;
    });
    context.services.changed(['runs']);
    return { readingId };
  },

  'visits.takeSuggestion': (input, context) => {
    requireOpenRun(context.db, input);
    const actor = actorOf(context);
    const { findings } = readRunState(context.db, input.runId, input.visitId, context.now);
    const suggestion = findings
      .filter((finding) => finding.readingId === input.readingId)
      .flatMap((finding) => finding.suggestions)
      .find((one) => one.code === input.code);
    if (suggestion === undefined || suggestion.changes.length === 0) return fail('no-such-suggestion', {});
    if (suggestion.needsNewReading) return fail('needs-new-reading', {});
    context.write((writer) => {
      for (const change of suggestion.changes) {
        const original = findReading(writer.db, change.readingId) ?? notFound('readings', change.readingId);
        const { id: _id, supersededById: _supersededById, ...kept } = original;
        const id = writer.insert(readings, {
          ...kept,
          quantity: change.quantity,
          valueOwn: change.toOwn,
          typedText: String(change.toOwn),
          typedUnit: entryUnits(change.quantity)[0].symbol,
          notMeasuredReason: null,
          typedById: actor.staffId,
          typedAt: context.now,
          origin: 'suggestion',
        });
        writer.update(readings, original.id, { supersededById: id });
      }
    });
    context.services.changed(['runs']);
    return {};
  },
};

function takes(item: ItemOf<'read' | 'series'>, quantity: QuantityKey): boolean {
  return item.kind === 'read'
    ? item.quantity === quantity
    : item.quantities.includes(quantity) || item.optional.includes(quantity);
}

type Typed = Pick<
  typeof readings.$inferInsert,
  'typedText' | 'typedUnit' | 'valueOwn' | 'comparator' | 'notMeasuredReason'
>;

/** Not measured needs a reason and leaves the value missing: missing is not zero. */
function readTyped(
  quantity: QuantityKey,
  input: { typedText: string; typedUnit: string; notMeasuredReason: string | null },
): Typed {
  if (input.notMeasuredReason !== null && input.notMeasuredReason !== '') {
    return {
      typedText: input.typedText,
      typedUnit: input.typedUnit,
      valueOwn: null,
      comparator: '=',
      notMeasuredReason: input.notMeasuredReason,
    };
  }
  const parsed = parseTyped(quantity, input.typedText, input.typedUnit);
  if (!parsed.ok) return fail('cannot-read', { problem: parsed.error });
  const { typedText, unit, valueOwn, comparator } = parsed.value;
  return { typedText, typedUnit: unit, valueOwn, comparator, notMeasuredReason: null };
}
