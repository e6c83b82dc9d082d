/** A run with what the domain says of it: findings and progress are computed each time, never stored. */
import type { ReadableDb } from '../../db/openStore.ts';
import { listPastRuns } from '../../db/pastRuns.ts';
import { findSiteIdOfJob } from '../../db/placements.ts';
import { readRunRecord } from '../../db/runRecord.ts';
import { findLastMakeSafeClosedAt, findRun, type RunRow } from '../../db/runs.ts';
import type { jobs } from '../../db/schema/index.ts';
import { getRevisionById } from '../../db/sheets.ts';
import { findSite } from '../../db/sites.ts';
import { findVisit } from '../../db/visits.ts';
import type { Finding } from '../../domain/judgement/finding.ts';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import type { ModelSheet, SheetStep, StepItem } from '../../domain/procedure/modelSheet.ts';
import { runProgress } from '../../domain/procedure/progress.ts';
import type { ProgressPerson, RunProgress, StepList } from '../../domain/procedure/progressTypes.ts';
import type { RunRecord } from '../../domain/procedure/runRecord.ts';
import { stepListOf, stepsOfList } from '../../domain/procedure/stepListOf.ts';
import type { PastRun } from '../../domain/trend/pastRun.ts';
import { notFound } from './handler.ts';
import { listRunPeople } from './licensing.ts';
import { visitDay } from './visitDay.ts';

export type LoadedRun = {
  readonly run: RunRow;
  readonly job: typeof jobs.$inferSelect;
  readonly sheet: ModelSheet;
  readonly sheetRevisionSha256: string;
  readonly steps: StepList;
};

export function loadRun(db: ReadableDb, runId: string): LoadedRun {
  const found = findRun(db, runId) ?? notFound('runs', runId);
  const revision = getRevisionById(db, found.run.sheetRevisionId);
  const sheet = revision.body as ModelSheet;
  return {
    ...found,
    sheet,
    sheetRevisionSha256: revision.sha256,
    steps: stepListOf(found.job.kind as RunRecord['kind'], sheet),
  };
}

export type RunState = LoadedRun & {
  readonly record: RunRecord;
  readonly people: readonly ProgressPerson[];
  readonly findings: readonly Finding[];
  readonly progress: RunProgress;
};

export function readRunState(db: ReadableDb, runId: string, visitId: string, now: string): RunState {
  const loaded = loadRun(db, runId);
  const visit = findVisit(db, visitId) ?? notFound('visits', visitId);
  const record = readRunRecord(db, loaded.run, loaded.job, visit.startedAt);
  const people = listRunPeople(db, record, visitDay(db, visit));
  const findings = judgeRun({
    record,
    sheet: loaded.sheet,
    reopenedAt: loaded.run.reopenedAt,
    past: readPast(db, loaded),
  });
  const progress = runProgress({
    sheet: loaded.sheet,
    steps: loaded.steps,
    record,
    findings,
    people,
    firingReleasedAt: findLastMakeSafeClosedAt(db, loaded.job.applianceId),
    reopenedAt: loaded.run.reopenedAt,
    now,
  });
  return { ...loaded, record, people, findings, progress };
}

/** What this run is held against: a startup is where comparing begins. */
export function readPast(db: ReadableDb, { run, job }: Pick<LoadedRun, 'run' | 'job'>): readonly PastRun[] {
  if (job.kind === 'startup') return [];
  const siteId = findSiteIdOfJob(db, job);
  const timeZone = siteId === undefined ? undefined : findSite(db, siteId)?.timeZone;
  return listPastRuns(db, job.applianceId, timeZone ?? 'UTC', run.startedAt);
}

export function stepsOf(loaded: Pick<LoadedRun, 'sheet' | 'steps'>): readonly SheetStep[] {
  return stepsOfList(loaded.sheet, loaded.steps);
}

export function findStep(loaded: Pick<LoadedRun, 'sheet' | 'steps'>, stepKey: string): SheetStep | undefined {
  return stepsOf(loaded).find((step) => step.key === stepKey);
}

export function findItem(step: SheetStep, itemKey: string): StepItem | undefined {
  return step.items.find((item) => item.key === itemKey);
}
