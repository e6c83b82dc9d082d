/**
 * A run's record, sorted once for all rules. Readings are put in an order of their own, so that the order in which they
 * were stored never shows in what is judged.
 */
import type { Fuel } from '../combustion/fuel.ts';
import { SITE_FUELS } from '../combustion/fuels.ts';
import type { ModelSheet } from '../procedure/modelSheet.ts';
import type { RecordedAnswer, RecordedHold, RecordedInstrument, RunRecord } from '../procedure/runRecord.ts';
import { stepListOf, stepsOfList } from '../procedure/stepListOf.ts';
import type { QuantityKey } from '../quantity/quantities.ts';
import type { PastRun } from '../trend/pastRun.ts';
import type { JudgeInput } from './judgeInput.ts';
import { instantMs, type Measured, measuredFrom } from './measured.ts';
import { type Region, regionOf } from './regions.ts';
import { type SampleRow, sampleRows } from './sampleRows.ts';

export type RunContext = {
  readonly record: RunRecord;
  readonly sheet: ModelSheet;
  readonly steps: ModelSheet['startup'];
  readonly region: Region;
  readonly fuel: Fuel;
  /** Live readings with a number, oldest first. */
  readonly measured: readonly Measured[];
  /** Replaced readings that had a number: they are history, and only told of. */
  readonly replaced: readonly Measured[];
  /** What was read together at one firing point, oldest first. */
  readonly rows: readonly SampleRow[];
  /** Rows of the same item and point, oldest first. */
  readonly seriesOf: (one: Measured) => readonly SampleRow[];
  readonly rowOf: (one: Measured) => SampleRow | undefined;
  readonly firingPoints: ReadonlySet<string>;
  readonly reopenedAtMs: number | null;
  /** Oldest first. */
  readonly past: readonly PastRun[];
  readonly stepOfItem: ReadonlyMap<string, string>;
  /** Of a wait that was run again only the newest. */
  readonly holds: readonly RecordedHold[];
  /** Oldest first. */
  readonly answersOf: (itemKey: string) => readonly RecordedAnswer[];
  /** The one given last. */
  readonly answer: (itemKey: string) => RecordedAnswer | undefined;
  readonly instrument: (instrumentId: string | null) => RecordedInstrument | undefined;
  /** Oldest first. */
  readonly all: (quantity: QuantityKey) => readonly Measured[];
  /** The newest at this point; `undefined` stands for any point. */
  readonly latest: (quantity: QuantityKey, point?: string | null) => Measured | undefined;
  /** The newest row of a firing point in which all of these were read. */
  readonly lastRow: (point: string | null, quantities: readonly QuantityKey[]) => SampleRow | undefined;
};

export function runContext(input: JudgeInput): RunContext {
  const { record, sheet } = input;
  const instruments = new Map(record.instruments.map((one) => [one.instrumentId, one]));
  const withNumber = record.readings
    .flatMap((reading) => measuredFrom(reading, instruments.get(reading.instrumentId ?? '')) ?? [])
    .sort(byTimeThenIdentity);
  const measured = withNumber.filter((one) => one.reading.supersededById === null);
  const replaced = withNumber.filter((one) => one.reading.supersededById !== null);
  const byQuantity = Map.groupBy(measured, (one) => one.quantity);
  const rows = sampleRows(measured);
  const series = Map.groupBy(rows, seriesKey);
  const rowOf = new Map(rows.flatMap((row) => row.readings.map((one) => [one, row] as const)));
  const steps = stepsOfList(sheet, stepListOf(record.kind, sheet));
  const answers = Map.groupBy(
    [...record.answers].sort((one, other) => compare(one.at, other.at) || compare(one.value ?? '', other.value ?? '')),
    (one) => one.itemKey,
  );
  const all = (quantity: QuantityKey) => byQuantity.get(quantity) ?? [];
  return {
    record,
    sheet,
    steps,
    region: regionOf(input.jurisdiction ?? record.site.jurisdiction),
    fuel: SITE_FUELS[record.fuel],
    measured,
    replaced,
    rows,
    seriesOf: (one) => series.get(seriesKey(rowOf.get(one))) ?? [],
    rowOf: (one) => rowOf.get(one),
    firingPoints: new Set(sheet.firingPoints.map((point) => point.key)),
    reopenedAtMs: instantMs(input.reopenedAt ?? ''),
    past: input.past ?? [],
    stepOfItem: new Map(steps.flatMap((step) => step.items.map((item) => [item.key, step.key] as const))),
    holds: [...new Map(byStart(record.holds).map((hold) => [hold.itemKey, hold])).values()],
    answersOf: (itemKey) => answers.get(itemKey) ?? [],
    answer: (itemKey) => answers.get(itemKey)?.at(-1),
    instrument: (instrumentId) => instruments.get(instrumentId ?? ''),
    all,
    latest: (quantity, point) => all(quantity).findLast((one) => point === undefined || one.point === point),
    lastRow: (point, quantities) =>
      rows.findLast((row) => row.point === point && quantities.every((quantity) => row.get(quantity) !== undefined)),
  };
}

function byStart(holds: readonly RecordedHold[]): readonly RecordedHold[] {
  return [...holds].sort((one, other) => compare(one.startedAt, other.startedAt));
}

function seriesKey(row: SampleRow | undefined): string {
  return `${row?.group}|${row?.point}`;
}

/** What no instant is known of comes last; everything after the instant only makes the order complete. */
function byTimeThenIdentity(one: Measured, other: Measured): number {
  return (
    compare(one.atMs ?? Number.MAX_SAFE_INTEGER, other.atMs ?? Number.MAX_SAFE_INTEGER) ||
    compare(one.reading.itemKey, other.reading.itemKey) ||
    compare(one.reading.sample, other.reading.sample) ||
    compare(one.quantity, other.quantity) ||
    compare(one.reading.readingId, other.reading.readingId) ||
    compare(one.value, other.value)
  );
}

function compare<T extends string | number>(one: T, other: T): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
