/** Readings as typed, and the one-key suggestions of the judgement. */
import { findStaff, isInstrument } from '../../db/people.ts';
import { findReading, findStandingReadingId } from '../../db/runs.ts';
import { readings } from '../../db/schema/index.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { readExportCell } from '../../domain/intake/readExportCell.ts';
import { GAS_RESULTS } from '../../domain/judgement/quantityGroups.ts';
import type { ItemOf } from '../../domain/procedure/modelSheet.ts';
import { stagePoint } from '../../domain/procedure/stagePoint.ts';
import { entryUnits } from '../../domain/quantity/entryUnits.ts';
import { parseTyped } from '../../domain/quantity/parseTyped.ts';
import { isQuantityKey, type QuantityKey } from '../../domain/quantity/quantities.ts';
import { actorOf, fail, type HandlerContext, type Handlers, notFound } from './handler.ts';
import {
  type ItemRef,
  requireLicensedIn,
  requireOpenItem,
  requireOpenRun,
  requireOpenStep,
  requireWhoDidIt,
} from './runGuards.ts';
import { readRunState } from './runState.ts';

export const readingHandlers: Handlers<'visits.recordReading' | 'visits.importReadings' | 'visits.takeSuggestion'> = {
  'visits.recordReading': (input, context) => {
    const place = requirePlace(context, input, input);
    requireInstrument(context, input.instrumentId);
    const read = readTyped(place.quantity, input);
    const readingId = context.write((writer) =>
      storeReading(writer, place, {
        ...read,
        instrumentId: input.instrumentId,
        measuredAt: context.now,
        origin: 'typed',
      }),
    );
    context.services.changed(['runs']);
    return { readingId };
  },

  'visits.importReadings': (input, context) => {
    const { run } = requireOpenRun(context.db, input);
    requireInstrument(context, input.instrumentId);
    const places = new Set<string>();
    const read = input.readings.map((row, position) => {
      const place = requirePlace(context, { ...row, visitId: input.visitId, runId: input.runId }, input);
      const { typedText, typedUnit, measuredAt } = row;
      const placeKey = `${row.itemKey} ${row.quantity} ${row.sample}`;
      if (places.has(placeKey)) return fail('one-place-twice', { position });
      places.add(placeKey);
      if (measuredAt !== null && !isDuring(run.startedAt, measuredAt, context.now))
        return fail('outside-the-visit', { position, measuredAt });
      const cell = readExportCell(place.quantity, typedText, typedUnit, input.decimalSign);
      if (cell === null) return fail('cannot-read-row', { position, problem: { code: 'empty' } });
      if (!cell.ok) return fail('cannot-read-row', { position, problem: cell.error });
      const { unit, valueOwn, comparator } = cell.value;
      return {
        place,
        typed: {
          typedText: cell.value.typedText,
          typedUnit: unit,
          valueOwn,
          comparator,
          notMeasuredReason: null,
          instrumentId: input.instrumentId,
          measuredAt: measuredAt ?? context.now,
          origin: 'imported' as const,
        },
      };
    });
    const readingIds = context.write((writer) => read.map(({ place, typed }) => storeReading(writer, place, typed)));
    context.services.changed(['runs']);
    return { readingIds };
  },

  'visits.takeSuggestion': (input, context) => {
    requireOpenRun(context.db, input);
    const reading = findReading(context.db, input.readingId);
    if (reading === undefined || reading.runId !== input.runId) return fail('no-such-suggestion', {});
    requireOpenStep(context, { ...input, stepKey: reading.stepKey });
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

type Place = ItemRef & {
  readonly quantity: QuantityKey;
  readonly point: string | null;
  readonly sample: number;
  readonly measuredById: string;
  readonly typedById: string;
};

/** Where a reading goes, when the step is open, its item takes the quantity, and whoever measured may. */
export function requirePlace(
  context: HandlerContext,
  at: ItemRef & { readonly quantity: string; readonly sample: number },
  by: { readonly measuredById: string | null },
): Place {
  const { loaded, step, item } = requireOpenItem(context, at, 'read', 'series', 'tuning');
  const { visitId, runId, stepKey, itemKey, quantity, sample } = at;
  if (!isQuantityKey(quantity) || !takes(item, quantity)) return fail('no-such-item', { stepKey, itemKey });
  const actor = actorOf(context);
  const measuredById = by.measuredById ?? actor.staffId;
  if (measuredById !== actor.staffId && findStaff(context.db, measuredById) === undefined)
    return notFound('staff', measuredById);
  if (GAS_RESULTS.has(quantity)) requireLicensedIn(step, context.db, loaded, visitId, measuredById);
  else requireWhoDidIt(context.db, loaded, step, visitId, measuredById);
  const point = item.kind === 'tuning' ? stageOf(item, sample) : item.kind === 'series' ? item.firingPoint : item.point;
  return { visitId, runId, stepKey, itemKey, quantity, point, sample, measuredById, typedById: actor.staffId };
}

/** Each tuning run has a sample for each of its stages: those of one that was interrupted stay its own. */
function stageOf(item: ItemOf<'tuning'>, sample: number): string | null {
  const stage = item.stages[(sample - 1) % item.stages.length];
  return stage === undefined ? null : stagePoint(stage.key);
}

export function requireInstrument(context: HandlerContext, instrumentId: string | null): void {
  if (instrumentId !== null && !isInstrument(context.db, instrumentId)) notFound('instruments', instrumentId);
}

/** The one that stood there before stays on file, marked as replaced. */
export function storeReading(
  writer: StoreWriter,
  place: Place,
  typed: Typed & Pick<typeof readings.$inferInsert, 'instrumentId' | 'measuredAt' | 'origin'>,
): string {
  const standingId = findStandingReadingId(writer.db, place);
  const id = writer.insert(readings, { ...place, ...typed, typedAt: writer.now });
  if (standingId !== undefined) writer.update(readings, standingId, { supersededById: id });
  return id;
}

/** An instrument's clock is never quite the computer's: a minute ahead is still now. */
const CLOCK_AHEAD_MS = 60_000;

function isDuring(startedAt: string, instant: string, now: string): boolean {
  const at = Date.parse(instant);
  return at >= Date.parse(startedAt) - CLOCK_AHEAD_MS && at <= Date.parse(now) + CLOCK_AHEAD_MS;
}

function takes(item: ItemOf<'read' | 'series' | 'tuning'>, quantity: QuantityKey): boolean {
  if (item.kind === 'tuning') return item.stageReadings?.some((one) => one.quantity === quantity) === true;
  return item.kind === 'read'
    ? item.quantity === quantity
    : item.quantities.includes(quantity) || item.optional.includes(quantity);
}

type Typed = Pick<
  typeof readings.$inferInsert,
  'typedText' | 'typedUnit' | 'valueOwn' | 'comparator' | 'notMeasuredReason'
>;

/** Not measured needs a reason and leaves the value missing: missing is not zero. */
export function readTyped(
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
