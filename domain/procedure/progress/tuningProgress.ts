/** The burner's own calibration: all stages in the sheet's order, not interrupted, finished, and its wait over. */
import type { ItemOf } from '../modelSheet.ts';
import type { TuningProgress } from '../progressTypes.ts';
import type { RecordedTuning } from '../runRecord.ts';
import { isBefore, secondsLeft } from './instants.ts';
import { answeredAt, type ItemContext, notPossible, type OwnProgress, openBecause } from './itemContext.ts';

export function tuningProgress(item: ItemOf<'tuning'>, context: ItemContext): OwnProgress {
  const run = context.byItem.tuning(item.key);
  if (run === undefined) return notPossible(item, context) ?? openBecause({ code: 'not-answered' });
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
