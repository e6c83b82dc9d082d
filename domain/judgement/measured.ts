/** A live reading with a number, ready to be judged: what the truth can be at least and at most. */
import type { RecordedInstrument, RecordedReading } from '../procedure/runRecord.ts';
import type { QuantityKey } from '../quantity/quantities.ts';
import { plusMinusOfInstrument } from '../trend/plusMinusOfInstrument.ts';

export type Measured = {
  readonly reading: RecordedReading;
  readonly quantity: QuantityKey;
  readonly point: string | null;
  readonly value: number;
  /** Zero when the instrument's accuracy is not known. */
  readonly plusMinus: number;
  /** −∞ for a `<` reading. */
  readonly lowest: number;
  /** +∞ for an over-range reading. */
  readonly highest: number;
  /** null: the instant can't be read. */
  readonly atMs: number | null;
};

/** null: not measured. Missing is not zero. */
export function measuredFrom(reading: RecordedReading, instrument: RecordedInstrument | undefined): Measured | null {
  const { valueOwn: value, quantity, comparator } = reading;
  if (value === null || !Number.isFinite(value)) return null;
  const plusMinus = plusMinusOfInstrument(value, instrument?.accuracy[quantity]);
  return {
    reading,
    quantity,
    point: reading.point,
    value,
    plusMinus,
    // An over-range display stands for "at least": the class of the instrument says nothing about it.
    lowest: comparator === '<' ? Number.NEGATIVE_INFINITY : comparator === '>' ? value : value - plusMinus,
    highest: comparator === '>' ? Number.POSITIVE_INFINITY : comparator === '<' ? value : value + plusMinus,
    atMs: instantMs(reading.measuredAt),
  };
}

export function instantMs(iso: string): number | null {
  const ms = Date.parse(iso);
  return Number.isNaN(ms) ? null : ms;
}

/** For a finding's inputs: the numbers as used and the readings they came from. An over-range display stays a text. */
export function inputsOf(readings: readonly Measured[]): Readonly<Record<string, number | string>> {
  const inputs: Record<string, number | string> = {};
  for (const { reading, quantity, point, value } of readings) {
    const sample = reading.sample > 1 ? `#${reading.sample}` : '';
    const name = `${quantity}${point === null ? '' : `@${point}`}${sample}`;
    inputs[name] = reading.comparator === '=' ? value : `${reading.comparator}${value}`;
    inputs[`${name}.reading`] = reading.readingId;
  }
  return inputs;
}
