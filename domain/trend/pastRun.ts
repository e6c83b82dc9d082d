/** What an earlier visit read on the same appliance, as far as a later one is compared with it. */
import type { FuelKey } from '../procedure/modelSheet.ts';
import type { RunRecord } from '../procedure/runRecord.ts';
import type { QuantityKey } from '../quantity/quantities.ts';

export type PastReading = {
  readonly readingId: string;
  readonly itemKey: string;
  readonly quantity: QuantityKey;
  readonly point: string | null;
  readonly sample: number;
  readonly valueOwn: number;
  readonly comparator: '=' | '>' | '<';
  readonly instrumentId: string | null;
  /** As far as the instrument can be off; zero: nobody said. */
  readonly plusMinus: number;
  readonly measuredAt: string;
};

export type PastRun = {
  readonly runId: string;
  readonly visitId: string;
  readonly kind: RunRecord['kind'];
  /** The day at the site. */
  readonly on: string;
  readonly fuel: FuelKey;
  /** A part was changed after which earlier readings say nothing any more. */
  readonly startsBaseline: boolean;
  /** Only what stands and has a number. */
  readonly readings: readonly PastReading[];
};

/**
 * The earlier runs that one of this fuel may be held against, oldest first: from the startup on, or from the last change
 * that made a new beginning. Another fuel is one too.
 */
export function sinceBaseline<Run extends Pick<PastRun, 'fuel' | 'startsBaseline'>>(
  past: readonly Run[],
  fuel: FuelKey,
): readonly Run[] {
  if (past.at(-1)?.fuel !== fuel) return [];
  const start = past.findLastIndex(
    (run, index) => run.startsBaseline || (index > 0 && run.fuel !== past[index - 1]?.fuel),
  );
  return past.slice(Math.max(0, start));
}
