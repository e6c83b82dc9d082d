/**
 * Findings that stand in the way, sorted by the item they are about. A re-read or replaced reading takes its findings
 * with it: only what was measured last decides.
 */
import type { Finding } from '../../judgement/finding.ts';
import type { QuantityKey } from '../../quantity/quantities.ts';
import type { ModelSheet, SheetLimit, StepItem } from '../modelSheet.ts';
import type { RunProgressInput } from '../progressTypes.ts';
import type { RecordedReading } from '../runRecord.ts';
import type { AskedStep } from './askedItems.ts';
import { foundAt } from './foundAt.ts';
import { secondsBetween } from './instants.ts';
import { isWait } from './isWait.ts';
import { seriesQuantities } from './readingProgress.ts';
import type { RecordByItem } from './recordByItem.ts';

/** What is written as the value of an answer on a reading when the maker's advice lets it stand; the advice is the reason. */
export const ADVICE_ANSWER = 'advice';

/** `isHard`: outside or stop, rather than not yet proven or not to be judged. `readAt`: null when it has no reading. */
export type OpenFinding = { readonly finding: Finding; readonly isHard: boolean; readonly readAt: string | null };

export type FindingsByItem = {
  readonly ofItem: ReadonlyMap<string, readonly OpenFinding[]>;
  /** About no item that this run asks for. */
  readonly ofRun: readonly OpenFinding[];
};

export function findingsByItem(
  input: RunProgressInput,
  asked: readonly AskedStep[],
  byItem: RecordByItem,
): FindingsByItem {
  const items = new Map(asked.flatMap((step) => step.items.map(({ item }) => [item.key, item] as const)));
  const readings = new Map(input.record.readings.map((reading) => [reading.readingId, reading]));
  const ofItem = new Map<string, OpenFinding[]>();
  const ofRun: OpenFinding[] = [];
  for (const finding of input.findings) {
    if (!standsInTheWay(finding)) continue;
    const sources = sourceReadings(finding, readings);
    // Computed from, or said of, something that has been replaced: the judgement of what replaced it counts.
    if (sources.some((reading) => reading.supersededById !== null)) continue;
    const isHard = finding.verdict === 'outside' || finding.verdict === 'stop';
    const source = sources.at(-1);
    const open: OpenFinding = { finding, isHard, readAt: foundAt(sources) };
    const item = items.get(source?.itemKey ?? finding.subject);
    if (item === undefined) {
      ofRun.push(open);
    } else if (
      (source !== undefined || !isWait(item)) &&
      newestOfEach(sources).every((one) => decides(one, isHard, items, byItem, input.sheet)) &&
      !standsWithAdvice(finding, item, input, byItem)
    ) {
      ofItem.set(item.key, [...(ofItem.get(item.key) ?? []), open]);
    }
  }
  return { ofItem, ofRun };
}

/** A proven reading inside its limits, or one without a limit, stands in nobody's way whatever its limit would block. */
function standsInTheWay(finding: Finding): boolean {
  if (finding.verdict === 'stop') return true;
  if (finding.blocks.length === 0) return false;
  // A comparison that lacks its other side: the item that is still to be read stands in the way itself, or was not possible.
  if (finding.verdict === 'cannot-judge' && finding.readingId === null) return false;
  const isFine =
    finding.verdict === 'within' || finding.verdict === 'near-the-edge' || finding.verdict === 'no-limit-on-sheet';
  return !(isFine && finding.proof.proven);
}

/** A computed finding names the readings it came from among its inputs. In the order they were measured. */
function sourceReadings(finding: Finding, readings: ReadonlyMap<string, RecordedReading>): readonly RecordedReading[] {
  const ids = finding.readingId === null ? Object.values(finding.basis.inputs) : [finding.readingId];
  return ids.flatMap((id) => (typeof id === 'string' ? (readings.get(id) ?? []) : [])).sort(byTime);
}

/** Of several samples of one thing the newest stands for all of them. */
function newestOfEach(sources: readonly RecordedReading[]): readonly RecordedReading[] {
  return [...new Map(sources.map((reading) => [`${reading.itemKey} ${reading.quantity}`, reading])).values()];
}

/**
 * The newest reading of an item decides. At a firing point the last `minSamples` of a series decide together about
 * outside and stop, so that one good sample does not wipe out a bad one taken a minute before; and what is read at a
 * firing point decides for every item that asks for the same there, so that what was found before the work is history
 * once it has been read again after it. So does what was found outside and is read again as it is left.
 */
function decides(
  reading: RecordedReading,
  isHard: boolean,
  items: ReadonlyMap<string, StepItem>,
  byItem: RecordByItem,
  sheet: ModelSheet,
): boolean {
  const item = items.get(reading.itemKey);
  if (item === undefined) return true;
  const firingPoint = firingPointOf(item, reading.quantity, sheet);
  const sameThing = [...items.values()].filter((one) =>
    firingPoint === null
      ? one.key === item.key || isLeftOf(one, item) || isLeftOf(item, one)
      : one.kind === item.kind && firingPointOf(one, reading.quantity, sheet) === firingPoint,
  );
  const live = sameThing.flatMap((one) => byItem.liveReadings(one.key, reading.quantity)).sort(byTime);
  const isSample = item.kind === 'series' && firingPoint !== null;
  const deciding = live.slice(isSample && isHard ? -sheet.steady.minSamples : -1);
  return deciding.some((one) => one.readingId === reading.readingId);
}

/** How something is left that was found outside its limits. */
function isLeftOf(left: StepItem, found: StepItem): boolean {
  return left.onlyFor?.foundOutside === found.key;
}

/** Where the burner stands while this item asks for that quantity; null: at no firing point, or it does not ask for it. */
function firingPointOf(item: StepItem, quantity: QuantityKey, sheet: ModelSheet): string | null {
  if (item.kind === 'series') return seriesQuantities(item).includes(quantity) ? item.firingPoint : null;
  if (item.kind !== 'read' || item.quantity !== quantity) return null;
  return sheet.firingPoints.some((point) => point.key === item.point) ? item.point : null;
}

function byTime(one: RecordedReading, other: RecordedReading): number {
  return secondsBetween(other.measuredAt, one.measuredAt);
}

function standsWithAdvice(finding: Finding, item: StepItem, input: RunProgressInput, byItem: RecordByItem): boolean {
  if (finding.verdict !== 'outside' || !finding.proof.proven || finding.basis.from !== 'sheet') return false;
  const answer = byItem.answer(item.key);
  if (answer?.value !== ADVICE_ANSWER || (answer.reason?.trim() ?? '') === '') return false;
  return input.sheet.limits.some((limit) => limit.mayStandWithAdvice === true && isAppliedLimit(limit, finding));
}

function isAppliedLimit(limit: SheetLimit, finding: Finding): boolean {
  const applied = finding.basis.limit;
  return (
    applied !== null &&
    applied.quantity === limit.quantity &&
    applied.point === limit.point &&
    applied.severity === limit.severity &&
    applied.min === (limit.min ?? null) &&
    applied.max === (limit.max ?? null)
  );
}
