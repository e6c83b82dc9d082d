/** What must hold before anything is written into a run: not sealed, the step opened, the item known, the person licensed. */
import { findAppliance } from '../../db/appliances.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import { readRunRecord } from '../../db/runRecord.ts';
import { isStepOpened } from '../../db/runs.ts';
import { findVisit, isJobOfVisit, type VisitRecord } from '../../db/visits.ts';
import type { FuelKey, ItemKind, ItemOf, SheetStep, StepItem } from '../../domain/procedure/modelSheet.ts';
import { plateRatingKw } from '../../domain/procedure/plateRating.ts';
import type { VisitRow } from '../contract/visits.ts';
import { fail, type HandlerContext, notFound } from './handler.ts';
import { type GasWork, requireLicence, requireLicenceBeforeFiring } from './licensing.ts';
import { findItem, findStep, type LoadedRun, loadRun, readRunState, stepsOf } from './runState.ts';
import { visitDay } from './visitDay.ts';
import { wasLeft } from './wasLeft.ts';

type VisitOutcome = NonNullable<VisitRow['outcome']>;
export type RunRef = { readonly visitId: string; readonly runId: string };
/** `isLater`: put in afterwards, as a paper or a photo is; how long the run was left is no matter then. */
export type StepRef = RunRef & { readonly stepKey: string; readonly isLater?: boolean };
export type ItemRef = StepRef & { readonly itemKey: string };
type Asked = Pick<HandlerContext, 'db' | 'now'>;

export type OpenItem<K extends ItemKind> = {
  readonly loaded: LoadedRun;
  readonly step: SheetStep;
  readonly item: ItemOf<K>;
};

export function requireOpenRun(db: ReadableDb, ref: RunRef): LoadedRun {
  return requireVisitOfOpenRun(db, ref).loaded;
}

function requireVisitOfOpenRun(
  db: ReadableDb,
  ref: RunRef,
): { readonly loaded: LoadedRun; readonly visit: VisitRecord } {
  const loaded = loadRun(db, ref.runId);
  const visit = findVisit(db, ref.visitId) ?? notFound('visits', ref.visitId);
  if (!isJobOfVisit(db, ref.visitId, loaded.job.id)) return notFound('visits', ref.visitId);
  if (loaded.run.sealedAt !== null) return fail('run-sealed', { sealedAt: loaded.run.sealedAt });
  return { loaded, visit };
}

export function requireOpenStep(
  context: Asked,
  ref: StepRef,
): { readonly loaded: LoadedRun; readonly step: SheetStep } {
  const { db } = context;
  const { loaded, visit } = requireVisitOfOpenRun(db, ref);
  requireVisitGoesOn(visit);
  const isNow = ref.isLater !== true;
  if (isNow && wasLeft(context, visit, loaded)) return fail('run-was-left', {});
  const step = findStep(loaded, ref.stepKey);
  if (step === undefined || !isStepOpened(db, ref.runId, ref.stepKey) || (isNow && isShutAgain(context, ref, loaded)))
    return fail('step-not-open', { stepKey: ref.stepKey });
  return { loaded, step };
}

/** A run that was taken up again: what has grown too old in the steps before shuts this one until it was asked again. */
function isShutAgain({ db, now }: Asked, { visitId, runId, stepKey }: StepRef, loaded: LoadedRun): boolean {
  if (loaded.run.reopenedAt === null) return false;
  const { progress } = readRunState(db, runId, visitId, now);
  const locks = progress.steps.find((one) => one.stepKey === stepKey)?.lockedBecause ?? [];
  const needsClear = findStep(loaded, stepKey)?.needsClear;
  // A stop found behind the hold point itself is measured again right there.
  const behind = new Set(stepsOf(loaded).flatMap((one) => (one.needsClear === needsClear ? [one.key] : [])));
  return locks.some(
    (lock) =>
      lock.code === 'step-first' || lock.blockers.some((one) => one.stepKey !== null && !behind.has(one.stepKey)),
  );
}

/** After a visit that left something open, work goes on in a return trip, which asks again for what has grown too old. */
export function requireVisitGoesOn(visit: VisitRecord): void {
  if (visit.outcome === null || visit.outcome === 'finished') return;
  fail('visit-ended', { outcome: visit.outcome as VisitOutcome, endedAt: visit.endedAt });
}

export function requireOpenItem<K extends ItemKind>(context: Asked, ref: ItemRef, ...kinds: readonly K[]): OpenItem<K> {
  const { loaded, step } = requireOpenStep(context, ref);
  const item = findItem(step, ref.itemKey);
  if (item === undefined || !isOneOf(item, kinds))
    return fail('no-such-item', { stepKey: ref.stepKey, itemKey: ref.itemKey });
  return { loaded, step, item };
}

function isOneOf<K extends ItemKind>(item: StepItem, kinds: readonly K[]): item is ItemOf<K> {
  return (kinds as readonly string[]).includes(item.kind);
}

/** In a step for licensed people, whoever did it must hold a licence for this fuel and size on the visit's day. */
export function requireWhoDidIt(
  db: ReadableDb,
  loaded: LoadedRun,
  step: Pick<SheetStep, 'who' | 'needsClear'>,
  visitId: string,
  staffId: string,
): void {
  if (step.who !== 'licensed') return;
  requireLicensedIn(step, db, loaded, visitId, staffId);
}

/** Behind the hold point before firing the licence must be known to reach as far as the appliance's rating; before it, not yet. */
export function requireLicensedIn(
  step: Pick<SheetStep, 'needsClear'>,
  db: ReadableDb,
  loaded: LoadedRun,
  visitId: string,
  staffId: string,
): void {
  if (step.needsClear !== null) requireLicensedFor(db, loaded, visitId, staffId);
  else requireLicenceBeforeFiring(db, staffId, gasWorkOfRun(db, loaded, visitId));
}

export function requireLicensedFor(db: ReadableDb, loaded: LoadedRun, visitId: string, staffId: string): void {
  requireLicence(db, staffId, gasWorkOfRun(db, loaded, visitId));
}

function gasWorkOfRun(db: ReadableDb, loaded: LoadedRun, visitId: string): GasWork {
  const visit = findVisit(db, visitId) ?? notFound('visits', visitId);
  return {
    on: visitDay(db, visit),
    fuel: loaded.run.fuel as FuelKey,
    ratedInputKw:
      findAppliance(db, loaded.job.applianceId)?.ratedInputKw ??
      plateRatingKw(readRunRecord(db, loaded.run, loaded.job, visit.startedAt)),
  };
}
