/** What a paper had room for, one line at a time: the boxes to type it in, and what is kept of them. */
import type { StepItem } from '../../domain/procedure/modelSheet.ts';
import type { ItemProgress, StepProgress } from '../../domain/procedure/progressTypes.ts';
import { entryUnits } from '../../domain/quantity/entryUnits.ts';
import { preferredUnit, type UnitSystem } from '../../domain/quantity/preferredUnit.ts';
import { type QuantityKey, quantitySpec } from '../../domain/quantity/quantities.ts';
import { assertNever } from '../../domain/result.ts';
import type { InputOf } from '../../electron/contract/index.ts';
import type { RunView } from '../../electron/contract/runs.ts';

export type Written = InputOf<'paper.transcribe'>['written'];

export type PaperSlot = {
  readonly slotKey: string;
  readonly itemKey: string;
  readonly label: string;
  readonly boxes: readonly PaperBox[];
  /** null: a box that is needed is empty. Times and days have been read already. */
  readonly write: (values: Readonly<Record<string, string>>) => Written | null;
  /** May be answered "not possible, because …" instead. */
  readonly mayBeNotPossible: boolean;
  /** A picture is chosen in place of anything typed. */
  readonly isPhoto?: boolean;
  /** A list takes one line after the other, or is said to be empty: how that reads. */
  readonly noneWords?: string;
};

export type PaperBox =
  | { readonly kind: 'time'; readonly name: string; readonly label: string }
  | { readonly kind: 'text'; readonly name: string; readonly label: string }
  | { readonly kind: 'day'; readonly name: string; readonly label: string }
  | {
      readonly kind: 'choice';
      readonly name: string;
      readonly label: string;
      readonly options: readonly { readonly value: string; readonly label: string }[];
    }
  | { readonly kind: 'amount'; readonly name: string; readonly label: string; readonly quantity: QuantityKey };

/** The lines of a step that are still open, in the order of the paper; lists that more is to be added to stay open. */
export function paperSlots(
  step: { readonly items: readonly StepItem[] },
  progress: StepProgress,
  view: Pick<RunView, 'record' | 'sheet'>,
  unitSystem: UnitSystem,
  listsToGoOn: ReadonlySet<string>,
): readonly PaperSlot[] {
  return progress.items.flatMap((shown) => {
    const item = step.items.find((one) => one.key === shown.itemKey);
    const isWanted = isOpen(shown) || listsToGoOn.has(shown.itemKey);
    return item === undefined || !isWanted ? [] : slotsOf(item, view, unitSystem);
  });
}

function isOpen({ state }: ItemProgress): boolean {
  return state !== 'answered' && state !== 'not-possible';
}

const AT: PaperBox = { kind: 'time', name: 'at', label: 'Time' };

function slotsOf(
  item: StepItem,
  { record, sheet }: Pick<RunView, 'record' | 'sheet'>,
  unitSystem: UnitSystem,
): readonly PaperSlot[] {
  const slot = (boxes: readonly PaperBox[], write: PaperSlot['write'], more: Partial<PaperSlot> = {}): PaperSlot => ({
    slotKey: item.key,
    itemKey: item.key,
    label: item.label,
    boxes,
    write,
    mayBeNotPossible: item.mayBeNotPossible && item.kind !== 'sign-off',
    ...more,
  });
  switch (item.kind) {
    case 'confirm':
      return [
        slot(
          [choiceBox(CONFIRMED.filter(({ value }) => value !== 'not-applicable' || item.notApplicable)), AT],
          asAnswer,
        ),
      ];
    case 'choose':
      return [slot([choiceBox(item.options), AT], asAnswer)];
    case 'note':
    case 'witness':
      return [slot([{ kind: 'text', name: 'value', label: 'Written' }, AT], asAnswer)];
    case 'sign-off':
      return [
        slot([{ kind: 'text', name: 'value', label: 'Name signed' }, AT], ({ value, at }) =>
          value && at ? { kind: 'sign-off', name: value, at } : null,
        ),
      ];
    case 'read':
      return [
        slot(
          [{ kind: 'amount', name: 'value', label: 'Read', quantity: item.quantity }, AT],
          asReading(item.quantity, 1, unitSystem),
        ),
      ];
    case 'series':
      return seriesSlots(item, record, sheet.steady.minSamples, unitSystem, slot);
    case 'hold':
      return [slot(FROM_TO, ({ from, to }) => (from && to ? { kind: 'hold', startedAt: from, endedAt: to } : null))];
    case 'tuning': {
      const stages: readonly PaperBox[] = item.stages.map(({ key, label }) => ({ kind: 'time', name: key, label }));
      return [
        slot([...FROM_TO, ...stages], (values) => {
          const { from, to } = values;
          const reached = item.stages.flatMap(({ key }) => {
            const at = values[key];
            return at ? [{ stageKey: key, at }] : [];
          });
          return from && to && reached.length === item.stages.length
            ? { kind: 'tuning', startedAt: from, stages: reached, finishedAt: to }
            : null;
        }),
      ];
    }
    case 'parts':
      return [
        slot(
          [
            choiceBox(
              (sheet.parts ?? []).map(({ key, label }) => ({ value: key, label })),
              'Part',
            ),
            { kind: 'text', name: 'number', label: 'Number' },
            { kind: 'text', name: 'serial', label: 'Serial, if any' },
            AT,
          ],
          ({ value, number, serial, at }) =>
            value && number?.trim() && at
              ? { kind: 'part', partKey: value, partNumber: number.trim(), serial: serial?.trim() || null, at }
              : null,
          { noneWords: 'No part was changed' },
        ),
      ];
    case 'lockouts': {
      const unit = preferredUnit('outdoorC', unitSystem).symbol;
      return [
        slot(
          [
            { kind: 'day', name: 'day', label: 'Day of the lockout' },
            { kind: 'time', name: 'time', label: 'Its time' },
            { kind: 'text', name: 'outdoor', label: `Outside, ${unit}, if known` },
            { kind: 'text', name: 'code', label: 'Code as shown, if any' },
            { ...AT, label: 'Written at' },
          ],
          ({ day, time, outdoor, code, at }) =>
            day && time && at
              ? {
                  kind: 'lockout',
                  happenedOn: day,
                  happenedAt: time,
                  code: code?.trim() || null,
                  outdoorText: outdoor?.trim() || null,
                  outdoorUnit: unit,
                  at,
                }
              : null,
          { noneWords: 'No lockout since the last visit' },
        ),
      ];
    }
    case 'photo':
      return [slot([], () => null, { isPhoto: true })];
    default:
      return assertNever(item);
  }
}

const FROM_TO: readonly PaperBox[] = [
  { kind: 'time', name: 'from', label: 'From' },
  { kind: 'time', name: 'to', label: 'To' },
];
const CONFIRMED = [
  { value: 'yes', label: 'yes' },
  { value: 'no', label: 'no' },
  { value: 'not-applicable', label: 'not applicable' },
];

function choiceBox(options: readonly { readonly value: string; readonly label: string }[], label = 'Ticked'): PaperBox {
  return {
    kind: 'choice',
    name: 'value',
    label,
    options: options.map(({ value, label }) => ({ value, label })),
  };
}

/** First when the rate was reached, then a line for each sample of each quantity that is not there yet. */
function seriesSlots(
  item: Extract<StepItem, { kind: 'series' }>,
  record: RunView['record'],
  minSamples: number,
  unitSystem: UnitSystem,
  slot: (boxes: readonly PaperBox[], write: PaperSlot['write'], more: Partial<PaperSlot>) => PaperSlot,
): readonly PaperSlot[] {
  const isReached = record.firingPoints.some((one) => one.firingPoint === item.firingPoint);
  const reached = slot([AT], ({ at }) => (at ? { kind: 'firing-point', at } : null), {
    slotKey: `${item.key} reached`,
    label: `${item.label}: rate reached`,
    mayBeNotPossible: true,
  });
  const samples = Array.from({ length: minSamples }, (_, index) => index + 1).flatMap((sample) =>
    item.quantities
      .filter(
        (quantity) =>
          !record.readings.some(
            (one) =>
              one.itemKey === item.key &&
              one.quantity === quantity &&
              one.sample === sample &&
              one.supersededById === null,
          ),
      )
      .map((quantity) =>
        slot(
          [{ kind: 'amount', name: 'value', label: 'Read', quantity }, AT],
          asReading(quantity, sample, unitSystem),
          {
            slotKey: `${item.key} ${sample} ${quantity}`,
            label: `${item.label}: ${sample}. ${quantitySpec(quantity).label}`,
            mayBeNotPossible: false,
          },
        ),
      ),
  );
  return isReached ? samples : [reached, ...samples];
}

function asAnswer({ value, at }: Readonly<Record<string, string>>): Written | null {
  return value && at ? { kind: 'answer', value, reason: null, at } : null;
}

function asReading(quantity: QuantityKey, sample: number, unitSystem: UnitSystem): PaperSlot['write'] {
  return ({ value, at, unit, instrument }) =>
    value && at
      ? {
          kind: 'reading',
          quantity,
          sample,
          typedText: value,
          typedUnit:
            entryUnits(quantity).find(({ symbol }) => symbol === unit)?.symbol ??
            preferredUnit(quantity, unitSystem).symbol,
          notMeasuredReason: null,
          instrumentId: instrument || null,
          at,
        }
      : null;
}
