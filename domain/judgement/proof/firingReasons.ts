/** Whether a flue reading was taken when the burner stood still: rate reached and settled, own tuning run over. */
import { changedParts } from '../../procedure/changedParts.ts';
import type { ItemOf, StepItem } from '../../procedure/modelSheet.ts';
import type { NotProvenReason } from '../finding.ts';
import { instantMs, type Measured } from '../measured.ts';
import type { RunContext } from '../runContext.ts';

export function firingReasons(one: Measured, context: RunContext): readonly NotProvenReason[] {
  if (one.point === null || !context.firingPoints.has(one.point)) return [];
  const reasons: NotProvenReason[] = [];
  if (!isSettled(one, one.point, context)) reasons.push('before-settled');
  if (!isTuned(one, context)) reasons.push('tuning-not-finished');
  return reasons;
}

function isSettled(one: Measured, point: string, context: RunContext): boolean {
  const { atMs } = one;
  if (atMs === null) return false;
  const settleS = context.sheet.firingPoints.find((known) => known.key === point)?.settleS ?? 0;
  const reachedMs = context.record.firingPoints
    .filter((reached) => reached.firingPoint === point)
    .flatMap((reached) => instantMs(reached.reachedAt) ?? [])
    .filter((ms) => ms <= atMs);
  return reachedMs.length > 0 && atMs - Math.max(...reachedMs) >= settleS * 1000;
}

function isTuned(one: Measured, context: RunContext): boolean {
  const { atMs } = one;
  return tuningItems(context).every((item) => {
    const runs = context.record.tunings.filter((run) => run.itemKey === item.key);
    return runs.some((run) => {
      const finishedMs = instantMs(run.finishedAt ?? '');
      if (finishedMs === null || atMs === null || run.interruptedAt !== null) return false;
      const isLater = (other: string) => (instantMs(other) ?? Number.POSITIVE_INFINITY) > finishedMs;
      const wasStartedAgain = runs.some(
        (other) => other !== run && isLater(other.startedAt) && (instantMs(other.startedAt) ?? 0) <= atMs,
      );
      return !wasStartedAgain && atMs >= finishedMs + item.postRunWaitS * 1000;
    });
  });
}

const memo = new WeakMap<RunContext, readonly ItemOf<'tuning'>[]>();

/** Only the runs that this appliance's sheet and fuel ask for. */
function tuningItems(context: RunContext): readonly ItemOf<'tuning'>[] {
  const known = memo.get(context);
  if (known) return known;
  const items = context.steps.flatMap((step) =>
    step.items.filter((item): item is ItemOf<'tuning'> => item.kind === 'tuning' && isAskedHere(item, context)),
  );
  memo.set(context, items);
  return items;
}

function isAskedHere(item: StepItem, context: RunContext): boolean {
  const { onlyFor } = item;
  if (onlyFor === undefined) return true;
  const { record } = context;
  if (onlyFor.fuels && !onlyFor.fuels.includes(record.fuel)) return false;
  const { emitters } = record.site;
  if (onlyFor.emitters && emitters.length > 0 && !onlyFor.emitters.some((one) => emitters.includes(one))) return false;
  const { answer, changedPart } = onlyFor;
  if (changedPart !== undefined && changedParts(record, context.sheet, changedPart).length === 0) return false;
  if (answer === undefined) return true;
  const given = record.answers.filter((one) => one.itemKey === answer.item);
  return given.length === 0 || given.some((one) => one.value === null || answer.is.includes(one.value));
}
