/** The record of a run, sorted by the item it belongs to. */
import type { QuantityKey } from '../../quantity/quantities.ts';
import type {
  RecordedAnswer,
  RecordedFiringPoint,
  RecordedHold,
  RecordedPhoto,
  RecordedReading,
  RecordedSignOff,
  RecordedTuning,
  RunRecord,
} from '../runRecord.ts';
import { newest, secondsBetween } from './instants.ts';

export type RecordByItem = {
  readonly record: RunRecord;
  readonly answer: (itemKey: string) => RecordedAnswer | undefined;
  /** Readings that nothing has replaced, in the order they were measured. */
  readonly liveReadings: (itemKey: string, quantity: QuantityKey) => readonly RecordedReading[];
  /** The newest of them, whatever was read. */
  readonly lastReading: (itemKey: string) => RecordedReading | undefined;
  readonly hold: (itemKey: string) => RecordedHold | undefined;
  readonly tuning: (itemKey: string) => RecordedTuning | undefined;
  readonly photos: (itemKey: string) => readonly RecordedPhoto[];
  readonly signOff: (itemKey: string) => RecordedSignOff | undefined;
  readonly firingPoint: (firingPoint: string) => RecordedFiringPoint | undefined;
  /** The rate the burner was last brought to. */
  readonly lastFiringPoint: RecordedFiringPoint | undefined;
};

export function recordByItem(record: RunRecord): RecordByItem {
  const answers = groupBy(record.answers, (one) => one.itemKey);
  const live = record.readings.filter((one) => one.supersededById === null);
  const readings = groupBy(live, (one) => readingKey(one.itemKey, one.quantity));
  for (const group of readings.values()) group.sort(byTimeThenSample);
  const holds = groupBy(record.holds, (one) => one.itemKey);
  const tunings = groupBy(record.tunings, (one) => one.itemKey);
  const photos = groupBy(record.photos, (one) => one.itemKey);
  const signOffs = groupBy(record.signOffs, (one) => one.itemKey);
  const firingPoints = groupBy(record.firingPoints, (one) => one.firingPoint);
  return {
    record,
    answer: (itemKey) => newest(answers.get(itemKey) ?? [], (one) => one.at),
    liveReadings: (itemKey, quantity) => readings.get(readingKey(itemKey, quantity)) ?? [],
    lastReading: (itemKey) =>
      newest(
        live.filter((one) => one.itemKey === itemKey),
        (one) => one.measuredAt,
      ),
    hold: (itemKey) => newest(holds.get(itemKey) ?? [], (one) => one.startedAt),
    tuning: (itemKey) => newest(tunings.get(itemKey) ?? [], (one) => one.startedAt),
    photos: (itemKey) => photos.get(itemKey) ?? [],
    signOff: (itemKey) => newest(signOffs.get(itemKey) ?? [], (one) => one.at),
    firingPoint: (firingPoint) => newest(firingPoints.get(firingPoint) ?? [], (one) => one.reachedAt),
    lastFiringPoint: newest(record.firingPoints, (one) => one.reachedAt),
  };
}

function readingKey(itemKey: string, quantity: QuantityKey): string {
  return `${itemKey} ${quantity}`;
}

function byTimeThenSample(one: RecordedReading, other: RecordedReading): number {
  return secondsBetween(other.measuredAt, one.measuredAt) || one.sample - other.sample;
}

function groupBy<T>(entries: readonly T[], keyOf: (entry: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const entry of entries) {
    const group = groups.get(keyOf(entry));
    if (group === undefined) groups.set(keyOf(entry), [entry]);
    else group.push(entry);
  }
  return groups;
}
