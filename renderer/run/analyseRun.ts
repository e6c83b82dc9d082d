/** What the domain makes of a run as it stands now: the judgement of every reading and how far the run has come. */
import type { Finding } from '../../domain/judgement/finding.ts';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import type { SheetStep } from '../../domain/procedure/modelSheet.ts';
import { runProgress } from '../../domain/procedure/progress.ts';
import type { RunProgress } from '../../domain/procedure/progressTypes.ts';
import { stepListOf, stepsOfList } from '../../domain/procedure/stepListOf.ts';
import type { PastRun } from '../../domain/trend/pastRun.ts';
import type { RunView } from '../../electron/contract/runs.ts';

export type RunAnalysis = {
  readonly steps: readonly SheetStep[];
  readonly findings: readonly Finding[];
  readonly progress: RunProgress;
};

export function judgeView(
  view: Pick<RunView, 'record' | 'sheet' | 'reopenedAt'>,
  past: readonly PastRun[] = [],
): readonly Finding[] {
  return judgeRun({ record: view.record, sheet: view.sheet, reopenedAt: view.reopenedAt, past });
}

export function analyseRun(
  view: RunView,
  findings: readonly Finding[],
  at: { readonly now: string; readonly firingReleasedAt: string | null },
): RunAnalysis {
  const steps = stepListOf(view.record.kind, view.sheet);
  const progress = runProgress({
    sheet: view.sheet,
    steps,
    record: view.record,
    findings,
    people: view.people,
    firingReleasedAt: at.firingReleasedAt,
    reopenedAt: view.reopenedAt,
    now: at.now,
  });
  return { steps: stepsOfList(view.sheet, steps), findings, progress };
}
