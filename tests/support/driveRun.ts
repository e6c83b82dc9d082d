/** Walks a run by doing whatever the procedure engine says comes next, until nothing is left but what blocks. */
import type { ModelSheet, StepItem } from '../../domain/procedure/modelSheet.ts';
import { runProgress } from '../../domain/procedure/progress.ts';
import type { ItemProgress, RunProgress, RunProgressInput, StepList } from '../../domain/procedure/progressTypes.ts';
import type { RunRecord } from '../../domain/procedure/runRecord.ts';
import { stepsOfList } from '../../domain/procedure/stepListOf.ts';
import { DAY_START, type EntryStyle, secondsAfter, withAcceptableEntry } from './runRecordBuilder.ts';

export type DrivenRun = {
  readonly record: RunRecord;
  readonly progress: RunProgress;
  readonly now: string;
  readonly entries: number;
};

export function driveRun(
  sheet: ModelSheet,
  steps: StepList,
  start: RunRecord,
  onEachState: (progress: RunProgress, record: RunRecord, now: string) => void = () => undefined,
  more: Partial<Omit<RunProgressInput, 'findings'>> & {
    readonly style?: Omit<EntryStyle, 'stepKey'>;
    readonly judge?: (record: RunRecord) => RunProgressInput['findings'];
  } = {},
): DrivenRun {
  const { style = { instrumentId: null, entryFor: () => 1 }, judge = () => [], ...input } = more;
  let record = start;
  let now = DAY_START;
  for (let entries = 0; entries < 5000; entries += 1) {
    const progress = runProgress({ ...input, findings: judge(record), sheet, steps, record, now });
    onEachState(progress, record, now);
    if (progress.nextItem === null) return { record, progress, now, entries };
    const { stepKey, itemKey } = progress.nextItem;
    const shown = progress.steps
      .find((step) => step.stepKey === stepKey)
      ?.items.find((item) => item.itemKey === itemKey);
    if (shown === undefined) throw new Error(`the next item ${stepKey}/${itemKey} is not shown`);
    if (shown.state === 'blocked-by-finding') return { record, progress, now, entries };
    const secondsLeft = mustWait(shown) ? (shown.timer?.secondsLeft ?? 0) : 0;
    if (secondsLeft > 0) {
      now = secondsAfter(now, secondsLeft);
    } else {
      now = secondsAfter(now, shown.kind === 'series' ? sheet.steady.apartS + 1 : 20);
      record = withAcceptableEntry(record, getItem(sheet, steps, itemKey), now, { ...style, stepKey });
    }
  }
  throw new Error('the run does not come to an end');
}

/** A run of its own, or the burner settling before the next sample. */
function mustWait(shown: ItemProgress): boolean {
  return shown.state === 'running' || shown.timer?.kind === 'settle';
}

export function getItem(sheet: ModelSheet, steps: StepList, itemKey: string): StepItem {
  const item = stepsOfList(sheet, steps)
    .flatMap((step) => step.items)
    .find((one) => one.key === itemKey);
  if (item === undefined) throw new Error(`no item "${itemKey}"`);
  return item;
}
