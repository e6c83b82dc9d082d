/**
 * Where the inputs of a worksheet belong in a run: read items of the same quantity and point, in steps that may be written
 * into now. Only what somebody typed is offered, never a usual figure, and only what reads as a reading.
 */
import type { SheetStep, StepItem } from '../../../domain/procedure/modelSheet.ts';
import type { RecordedReading, RunRecord } from '../../../domain/procedure/runRecord.ts';
import { parseTyped } from '../../../domain/quantity/parseTyped.ts';
import type { UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { readNumberText } from '../../../domain/quantity/readNumberText.ts';
import type { RunAnalysis } from '../../run/analyseRun.ts';
import { type TypedInputs, typedNumber } from '../core/evaluate.ts';
import type { NumberField } from '../core/fields.ts';
import type { Worksheet } from '../core/worksheet.ts';

export type Place = {
  readonly key: string;
  readonly label: string;
  readonly text: string;
  readonly unit: string;
  /** With its unit, the one typed behind it or the one of the box. */
  readonly words: string;
  readonly step: SheetStep;
  readonly item: StepItem;
  readonly quantity: QuantityKey;
  readonly point: string | null;
  readonly sample: number;
  /** What is kept there already. */
  readonly standing: RecordedReading | null;
};

/** `asked`: the run asks for a number of this worksheet at all, in a step open now or not. */
export type PlacesInRun = { readonly places: readonly Place[]; readonly asked: boolean };

export function placesInRun(
  worksheet: Worksheet,
  typed: TypedInputs,
  unitSystem: UnitSystem,
  run: { readonly record: RunRecord; readonly analysis: RunAnalysis },
): PlacesInRun {
  const fields = Object.entries(worksheet.fields).flatMap(([key, field]) =>
    field.kind === 'number' && field.reading !== undefined ? [{ key, field, reading: field.reading }] : [],
  );
  const slots = run.analysis.steps.flatMap((step) => step.items.flatMap((item) => slotsOf(step, item, run)));
  const matches = fields.flatMap(({ key, field, reading }) =>
    slots
      .filter(({ quantity, point }) => quantity === reading.quantity && (reading.points?.includes(point) ?? true))
      .map((slot) => ({ key, field, slot })),
  );
  return {
    asked: matches.length > 0,
    places: matches.flatMap(({ key, field, slot }) => placeOf(key, field, slot, typed, unitSystem) ?? []),
  };
}

type Slot = Omit<Place, 'key' | 'label' | 'text' | 'unit' | 'words'> & { readonly mayBeWritten: boolean };

function slotsOf(
  step: SheetStep,
  item: StepItem,
  { record, analysis }: { readonly record: RunRecord; readonly analysis: RunAnalysis },
): readonly Slot[] {
  const progress = analysis.progress.steps.find((one) => one.stepKey === step.key);
  const state = progress?.items.find((one) => one.itemKey === item.key)?.state;
  // Not among them: this run does not ask for it.
  if (progress === undefined || state === undefined) return [];
  const isOpen = progress.lockedBecause.length === 0 && state !== 'waiting' && state !== 'not-possible';
  const standing = (quantity: QuantityKey) =>
    record.readings.filter(
      (one) => one.supersededById === null && one.itemKey === item.key && one.quantity === quantity,
    );
  if (item.kind === 'read') {
    const kept = standing(item.quantity).at(-1) ?? null;
    const at = { quantity: item.quantity, point: item.point, sample: 1, standing: kept };
    return [{ step, item, ...at, mayBeWritten: isOpen }];
  }
  if (item.kind !== 'series') return [];
  // Before the burner has reached the point, a number there would be of another one.
  const isReached = record.firingPoints.some(({ firingPoint }) => firingPoint === item.firingPoint);
  return [...item.quantities, ...item.optional].map((quantity) => ({
    step,
    item,
    quantity,
    point: item.firingPoint,
    sample: 1 + Math.max(0, ...standing(quantity).map(({ sample }) => sample)),
    standing: null,
    mayBeWritten: isOpen && isReached,
  }));
}

function placeOf(
  key: string,
  field: NumberField,
  { mayBeWritten, ...slot }: Slot,
  typed: TypedInputs,
  unitSystem: UnitSystem,
): Place | null {
  const input = typed[key];
  if (!mayBeWritten || input === undefined) return null;
  const { text, unit } = typedNumber(field, input, unitSystem);
  const read = parseTyped(slot.quantity, text, unit);
  if (!read.ok) return null;
  const { standing } = slot;
  // The same number again is no new reading.
  if (standing !== null && standing.valueOwn === read.value.valueOwn) return null;
  const place = `${key} ${slot.item.key} ${slot.quantity} ${slot.sample}`;
  const plain = text.trim();
  const hasUnit = unit === '' || readNumberText(plain)?.rest !== '';
  return { key: place, label: field.label, text: plain, unit, words: hasUnit ? plain : `${plain} ${unit}`, ...slot };
}
