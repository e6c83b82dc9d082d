/** Items answered by measuring: a single reading, or samples of several quantities at a firing point. */
import type { QuantityKey } from '../../quantity/quantities.ts';
import type { ItemOf } from '../modelSheet.ts';
import type { ItemReason, ItemTimer } from '../progressTypes.ts';
import type { RecordedFiringPoint, RecordedReading } from '../runRecord.ts';
import { isBefore, secondsLeft } from './instants.ts';
import { answeredAt, type ItemContext, notPossible, type OwnProgress, openBecause } from './itemContext.ts';
import { readAgainSince } from './readAgainSince.ts';

export function readProgress(item: ItemOf<'read'>, context: ItemContext): OwnProgress {
  const last = context.byItem.liveReadings(item.key, item.quantity).at(-1);
  if (last === undefined) return notPossible(item, context) ?? openBecause({ code: 'not-answered' });
  if (last.valueOwn !== null) return answeredAt(last.measuredAt);
  const reason = last.notMeasuredReason?.trim() ?? '';
  if (reason !== '' && item.mayBeNotPossible) return { state: 'not-possible', because: [], lastAt: last.measuredAt };
  return openBecause({ code: 'not-measured', quantity: item.quantity, reason });
}

export function seriesProgress(item: ItemOf<'series'>, context: ItemContext): OwnProgress {
  const left = notPossible(item, context);
  const need = context.input.sheet.steady.minSamples;
  const because: ItemReason[] = [];
  // What was found before the work is not read again: it is what it was.
  const since = item.isAsFound === true ? null : readAgainSince(context.input);
  let isOutdated = false;
  let lastAt: string | null = null;
  for (const quantity of item.quantities) {
    const all = context.byItem.liveReadings(item.key, quantity);
    const live = since === null ? all : all.filter((one) => isBefore(since, one.measuredAt));
    if (live.length < all.length && live.length < need) isOutdated = true;
    lastAt = live.at(-1)?.measuredAt ?? lastAt;
    const reason = quantityReason(item, quantity, live, need);
    if (reason !== null) because.push(reason);
  }
  if (lastAt === null && left !== null && !isOutdated) return left;
  if (isOutdated) because.unshift({ code: 'adjusted-since', at: since ?? '' });
  const reached = reachedPoint(item, because.length > 0, context);
  if (reached === undefined) because.unshift({ code: 'firing-point-not-reached', firingPoint: item.firingPoint });
  const timer = reached === undefined ? {} : settleTimer(item, reached, context);
  if (because.length === 0 && lastAt !== null) return { ...answeredAt(lastAt), ...timer };
  return { ...openBecause(...because), lastAt, ...timer };
}

/** Every quantity that counts for a series, in the order of the sheet. */
export function seriesQuantities(item: ItemOf<'series'>): readonly QuantityKey[] {
  return [...item.quantities, ...item.optional];
}

function quantityReason(
  item: ItemOf<'series'>,
  quantity: QuantityKey,
  live: readonly RecordedReading[],
  need: number,
): ItemReason | null {
  const have = live.filter((one) => one.valueOwn !== null).length;
  if (have >= need) return null;
  const unmeasured = live.at(-1);
  if (unmeasured?.valueOwn === null && (unmeasured.notMeasuredReason?.trim() ?? '') !== '') {
    return item.mayBeNotPossible
      ? null
      : { code: 'not-measured', quantity, reason: unmeasured.notMeasuredReason ?? '' };
  }
  return { code: 'too-few-samples', quantity, have, need };
}

/**
 * While samples are missing the burner must stand at this point now: been there, gone to another and come back without
 * a word is not known. Whether the samples taken came too early is the judgement's to say.
 */
function reachedPoint(
  item: ItemOf<'series'>,
  samplesMissing: boolean,
  context: ItemContext,
): RecordedFiringPoint | undefined {
  const reached = context.byItem.firingPoint(item.firingPoint);
  const isThereNow = context.byItem.lastFiringPoint?.firingPoint === item.firingPoint;
  return samplesMissing && !isThereNow ? undefined : reached;
}

/** How long to wait for the next sample. */
function settleTimer(
  item: ItemOf<'series'>,
  reached: RecordedFiringPoint,
  context: ItemContext,
): { readonly timer?: ItemTimer } {
  const totalS = context.input.sheet.firingPoints.find((point) => point.key === item.firingPoint)?.settleS;
  if (totalS === undefined) return {};
  const startedAt = reached.reachedAt;
  const left = secondsLeft(startedAt, totalS, context.input.now);
  return left === null ? {} : { timer: { kind: 'settle', startedAt, totalS, secondsLeft: left } };
}
