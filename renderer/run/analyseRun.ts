/** What the domain makes of a run as it stands now: the judgement of every reading and how far the run has come. */

import type { Finding } from '../../domain/judgement/finding.ts';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import type { SheetStep } from '../../domain/procedure/modelSheet.ts';
import { runProgress } from '../../domain/procedure/progress.ts';
import type { RunProgress, StepList } from '../../domain/procedure/progressTypes.ts';
import type { RunView } from '../../electron/contract/visits.ts';

export type RunAnalysis = {
  readonly steps: readonly SheetStep[];
  readonly findings: readonly Finding[];
  readonly progress: RunProgress;
};

export function stepListOf(view: Pick<RunView, 'record'>): StepList {
  return view.record.kind === 'startup' ? 'startup' : 'service';
}

export function findingsOf(view: Pick<RunView, 'record' | 'sheet'>, now: string): readonly Finding[] {
  return judgeRun({ record: view.record, sheet: view.sheet, now });
}

export function analyseRun(view: RunView, findings: readonly Finding[], now: string): RunAnalysis {
  const list = stepListOf(view);
  const progress = runProgress({
    sheet: view.sheet,
    steps: list,
    record: view.record,
    findings,
    people: view.people,
    reopenedAt: view.reopenedAt,
    now,
  });
  return { steps: view.sheet[list], findings, progress };
}
