/** Earlier visits for tests: whatever is named is read, at high fire unless said otherwise, with one analyser. */
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import type { PastReading, PastRun } from '../../../domain/trend/pastRun.ts';

export type ReadAs = Readonly<Record<string, number>>;

/** `{ 'co2DryVolPct@high': 9.2, 'waterPh@after': 8.1 }` */
export function readingsOf(values: ReadAs, more: Partial<PastReading> = {}): readonly PastReading[] {
  return Object.entries(values).map(([where, valueOwn]) => {
    const [quantity, point = null] = where.split('@');
    return {
      readingId: `${where} ${more.measuredAt ?? ''} ${more.itemKey ?? ''}`,
      itemKey: `item-${where}`,
      quantity: quantity as QuantityKey,
      point,
      sample: 1,
      valueOwn,
      comparator: '=',
      instrumentId: 'analyser',
      plusMinus: 0,
      measuredAt: '2026-03-02T10:00:00.000Z',
      ...more,
    };
  });
}

export function pastRun(on: string, values: ReadAs, more: Partial<PastRun> = {}): PastRun {
  return {
    runId: `run of ${on}`,
    visitId: `visit of ${on}`,
    kind: 'service',
    on,
    fuel: 'natural-gas',
    startsBaseline: false,
    readings: readingsOf(values, { measuredAt: `${on}T10:00:00.000Z` }),
    ...more,
  };
}
