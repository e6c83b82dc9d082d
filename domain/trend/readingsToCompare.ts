/** A run's own readings in the shape in which earlier ones are kept: what stands and has a number. */
import type { RunRecord } from '../procedure/runRecord.ts';
import type { PastReading } from './pastRun.ts';
import { plusMinusOfInstrument } from './plusMinusOfInstrument.ts';

export function readingsToCompare(record: Pick<RunRecord, 'readings' | 'instruments'>): readonly PastReading[] {
  const instruments = new Map(record.instruments.map((one) => [one.instrumentId, one]));
  return record.readings.flatMap((reading) => {
    const { readingId, itemKey, quantity, point, sample, valueOwn, comparator, instrumentId, measuredAt } = reading;
    if (reading.supersededById !== null || valueOwn === null || !Number.isFinite(valueOwn)) return [];
    const accuracy = instruments.get(instrumentId ?? '')?.accuracy[quantity];
    const plusMinus = plusMinusOfInstrument(valueOwn, accuracy);
    return [{ readingId, itemKey, quantity, point, sample, valueOwn, comparator, instrumentId, plusMinus, measuredAt }];
  });
}
