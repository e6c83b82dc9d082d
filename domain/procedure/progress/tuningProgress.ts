/** The burner's own calibration: all stages in the sheet's order, not interrupted, finished, and its wait over. */
import { changedParts } from '../changedParts.ts';
import type { ItemOf } from '../modelSheet.ts';
import type { ItemReason, TuningProgress } from '../progressTypes.ts';
import type { RecordedTuning } from '../runRecord.ts';
import { stagePoint } from '../stagePoint.ts';
import { isBefore, secondsLeft } from './instants.ts';
import { answeredAt, type ItemContext, notPossible, type OwnProgress, openBecause } from './itemContext.ts';

export function tuningProgress(item: ItemOf<'tuning'>, context: ItemContext): OwnProgress {
  const run = context.byItem.tuning(item.key);
  if (run === undefined) return notPossible(item, context) ?? openBecause({ code: 'not-answered' });
  const changed = changedParts(context.input.record, context.input.sheet, 'needs-tuning').findLast(({ at }) =>
    isBefore(run.startedAt, at),
  );
  if (changed !== undefined) {
    return openBecause({ code: 'part-changed-since', partLabel: changed.part.label, at: changed.at });
  }
  if (run.interruptedAt !== null) return openBecause({ code: 'tuning-interrupted', reason: run.interruptedReason });

  const missing = missingStages(item, run);
  const tuning: TuningProgress = {
    startedAt: run.startedAt,
    reachedStageKeys: run.stages.map((stage) => stage.stageKey),
    nextStageKey: missing[0] ?? null,
  };
  if (run.finishedAt === null) {
    return {
      state: 'running',
      because: [{ code: 'tuning-running', nextStageKey: tuning.nextStageKey }],
      lastAt: null,
      tuning,
    };
  }
  if (missing.length > 0) return openBecause({ code: 'tuning-stages-missing', stageKeys: missing });
  const unread = unreadAtStages(item, run, context);
  if (unread !== null) return { ...openBecause(unread), tuning };

  const totalS = item.postRunWaitS;
  const left = secondsLeft(run.finishedAt, totalS, context.input.now);
  if (left === null) return openBecause({ code: 'clock-jumped' });
  if (left === 0) return { ...answeredAt(run.finishedAt), tuning };
  return {
    state: 'running',
    because: [{ code: 'post-run-wait', secondsLeft: left }],
    lastAt: null,
    tuning,
    timer: { kind: 'post-run', startedAt: run.finishedAt, totalS, secondsLeft: left },
  };
}

/** Of the run that counts: what was written down for one that was interrupted is not this one's. */
function unreadAtStages(item: ItemOf<'tuning'>, run: RecordedTuning, context: ItemContext): ItemReason | null {
  for (const stage of item.stages) {
    for (const { quantity, isNeeded } of item.stageReadings ?? []) {
      if (!isNeeded) continue;
      const isRead = context.byItem
        .liveReadings(item.key, quantity)
        .some((one) => one.point === stagePoint(stage.key) && !isBefore(one.measuredAt, run.startedAt));
      if (!isRead) return { code: 'stage-not-read', stageKey: stage.key, quantity };
    }
  }
  return null;
}

/** Stages count only as far as they were reached in the sheet's order. */
function missingStages(item: ItemOf<'tuning'>, run: RecordedTuning): readonly string[] {
  let reachedAt = run.startedAt;
  for (const [index, stage] of item.stages.entries()) {
    const reached = run.stages.find((one) => one.stageKey === stage.key && !isBefore(one.reachedAt, reachedAt));
    if (reached === undefined) return item.stages.slice(index).map((one) => one.key);
    reachedAt = reached.reachedAt;
  }
  return [];
}
