/** Whether the instrument makes a reading proof: known, of the right kind, in date on the day of the reading, and zeroed before it. */
import type { QuantityKey } from '../../quantity/quantities.ts';
import type { NotProvenReason } from '../finding.ts';
import type { Measured } from '../measured.ts';
import { FLUE_GAS, NEEDS_INSTRUMENT } from '../quantityGroups.ts';
import type { RunContext } from '../runContext.ts';
import { calibrationOn } from './calibrationOn.ts';
import { FRESH_AIR_LIMITS, NEEDED_IN_FRESH_AIR } from './freshAirLimits.ts';
import { canRead, instrumentKindFor } from './instrumentKindFor.ts';
import { dayOfReading } from './siteDay.ts';

export function instrumentReasons(one: Measured, context: RunContext): readonly NotProvenReason[] {
  const reasons: NotProvenReason[] = [];
  const instrument = context.instrument(one.reading.instrumentId);
  const isNeeded = NEEDS_INSTRUMENT.has(one.quantity);
  if (instrument === undefined) return isNeeded ? ['instrument-unknown'] : [];
  // Where a dial or the eye gives the number, an instrument named beside it changes nothing.
  if (instrumentKindFor(one.quantity) !== null && !canRead(instrument, one.quantity)) reasons.push('wrong-instrument');
  if (one.atMs !== null) {
    const day = dayOfReading(one.atMs, context);
    const calibration = calibrationOn(instrument.calibrations, day);
    if (calibration === null && isNeeded) reasons.push('instrument-not-calibrated');
    if (calibration !== null && calibration.dueOn < day) reasons.push('instrument-out-of-date');
  }
  if (FLUE_GAS.has(one.quantity) && !wasZeroed(one, context)) reasons.push('instrument-not-zeroed');
  return reasons;
}

function wasZeroed(one: Measured, context: RunContext): boolean {
  const lapseMs = context.sheet.lapseHours.analyserZero * 3_600_000;
  const { atMs } = one;
  if (atMs === null) return false;
  return FRESH_AIR_LIMITS.every(({ quantity, min, max }) => {
    const check = [...context.all(quantity), ...lapsedChecks(quantity, lapseMs, context)]
      .toSorted((a, b) => (a.atMs ?? 0) - (b.atMs ?? 0))
      .findLast(
        (row) => row.reading.instrumentId === one.reading.instrumentId && row.atMs !== null && row.atMs <= atMs,
      );
    if (check?.atMs == null || atMs - check.atMs > lapseMs) return !NEEDED_IN_FRESH_AIR.includes(quantity);
    return check.value >= min && check.value <= max && check.reading.comparator === '=';
  });
}

/**
 * Checks that were made anew only because they had grown too old, as on a return trip: what was read on the first day keeps the
 * check of that day. One that was replaced sooner was put right, and proves nothing.
 */
function lapsedChecks(quantity: QuantityKey, lapseMs: number, context: RunContext): readonly Measured[] {
  const { replaced } = context;
  if (replaced.length === 0) return [];
  const byId = new Map([...replaced, ...context.all(quantity)].map((row) => [row.reading.readingId, row]));
  return replaced.filter((row) => {
    if (row.quantity !== quantity || row.atMs === null) return false;
    const next = byId.get(row.reading.supersededById ?? '');
    return next?.atMs != null && next.atMs - row.atMs > lapseMs;
  });
}
