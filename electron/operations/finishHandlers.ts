/** The end of a visit: what it ends as, and the sealing of its runs. */
import { listApplianceDates } from '../../db/appliances.ts';
import { listOpenedSteps } from '../../db/runs.ts';
import { applianceDates, jobs, visits } from '../../db/schema/index.ts';
import { findSite } from '../../db/sites.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { findVisit, listVisitJobs } from '../../db/visits.ts';
import type { ProgressBlocker } from '../../domain/procedure/progressTypes.ts';
import type { VisitRow } from '../contract/visits.ts';
import { actorOf, fail, type Handlers, notFound } from './handler.ts';
import { requireLicensedIn, requireOpenRun } from './runGuards.ts';
import { type LoadedRun, type RunState, readRunState, stepsOf } from './runState.ts';
import { sealRun } from './sealRun.ts';
import { dayIn } from './today.ts';

type VisitOutcome = NonNullable<VisitRow['outcome']>;

export const finishHandlers: Handlers<'visits.finish' | 'visits.seal'> = {
  'visits.finish': (input, context) => {
    const visit = findVisit(context.db, input.visitId) ?? notFound('visits', input.visitId);
    if (visit.startedAt === null) return fail('not-begun', {});
    // How it ended is part of what was sealed: said once, and not again.
    if (visit.outcome !== null)
      return fail('visit-ended', { outcome: visit.outcome as VisitOutcome, endedAt: visit.endedAt });
    if (input.outcome !== 'finished' && (input.reason ?? '') === '') return fail('reason-missing', {});
    const states = listVisitJobs(context.db, [visit.id]).flatMap(({ runId }) =>
      runId === null ? [] : [readRunState(context.db, runId, visit.id, context.now)],
    );
    if (input.outcome === 'made-safe' && states.every((state) => state.record.openMakeSafes === 0))
      return fail('no-make-safe', {});
    const blockers =
      input.outcome === 'made-safe'
        ? []
        : states
            .filter((state) => mustBeClear(state, input.outcome, context.db))
            .flatMap((state) => (input.outcome === 'finished' ? leavingOf(state) : withoutOpenFault(state)));
    if (blockers.length > 0) return fail('leaving-blocked', { blockers });
    context.write((writer) => {
      writer.update(visits, visit.id, {
        state: 'finished',
        outcome: input.outcome,
        outcomeReason: input.reason,
        endedAt: context.now,
        labourMin: input.labourMin,
      });
      if (input.outcome === 'finished') for (const state of states) closeJob(writer, state, visit.siteId);
    });
    context.services.changed(['visits', 'runs', 'jobs', 'registrations', 'appliances']);
    return {};
  },

  'visits.seal': (input, context) => {
    const loaded = requireOpenRun(context.db, input);
    const actor = actorOf(context);
    const needsClear = hasFired(loaded, context.db) ? 'firing' : null;
    requireLicensedIn({ needsClear }, context.db, loaded, input.visitId, actor.staffId);
    const visit = findVisit(context.db, input.visitId) ?? notFound('visits', input.visitId);
    if (visit.outcome === null) return fail('not-finished', {});
    const state = readRunState(context.db, input.runId, input.visitId, context.now);
    if (visit.outcome === 'finished' && state.progress.gates.leaving.length > 0) {
      return fail('leaving-blocked', { blockers: [...state.progress.gates.leaving] });
    }
    const sealed = context.write((writer) =>
      sealRun(writer, context.store.raw, state, visit, { sealedById: actor.staffId, sealedAt: context.now }),
    );
    context.services.changed(['visits', 'runs', 'registrations', 'appliances']);
    return sealed;
  },
};

/**
 * A finished visit leaves nothing open. A visit that must come back, or found the site not ready, may leave open what it
 * likes as long as the burner was never fired; once fired, it is finished properly or made safe.
 */
function mustBeClear(state: RunState, outcome: string, db: Parameters<typeof listOpenedSteps>[0]): boolean {
  return outcome === 'finished' || hasFired(state, db);
}

/** A step behind the hold point before firing was opened. */
function hasFired(loaded: LoadedRun, db: Parameters<typeof listOpenedSteps>[0]): boolean {
  const opened = new Set(listOpenedSteps(db, loaded.run.id));
  return stepsOf(loaded).some((step) => step.needsClear === 'firing' && opened.has(step.key));
}

function leavingOf(state: RunState): readonly ProgressBlocker[] {
  return state.progress.gates.leaving;
}

/**
 * A fault that nobody has found yet is what a return trip is for: it keeps the visit from being finished, not from ending.
 * The closing step, which opens only when nothing else is open, is then the return trip's as well.
 */
function withoutOpenFault(state: RunState): readonly ProgressBlocker[] {
  const leaving = leavingOf(state);
  if (!leaving.some(isOpenFault)) return leaving;
  const closing = new Set(stepsOf(state).flatMap((step) => (step.needsClear === 'leaving' ? [step.key] : [])));
  return leaving.filter(
    (blocker) => !isOpenFault(blocker) && (blocker.stepKey === null || !closing.has(blocker.stepKey)),
  );
}

function isOpenFault({ because }: ProgressBlocker): boolean {
  return because.every((reason) => reason.code === 'fault-open');
}

/** A finished startup is when the appliance was started, unless that day is on file already. */
function closeJob(writer: StoreWriter, state: RunState, siteId: string): void {
  writer.update(jobs, state.job.id, { closedAt: writer.now });
  if (state.job.kind !== 'startup') return;
  const known = listApplianceDates(writer.db, state.job.applianceId);
  if (known.some((date) => date.kind === 'started')) return;
  const timeZone = findSite(writer.db, siteId)?.timeZone ?? 'UTC';
  writer.insert(applianceDates, {
    applianceId: state.job.applianceId,
    kind: 'started',
    on: dayIn(timeZone, state.run.startedAt),
    precision: 'day',
    source: 'startup visit',
  });
}
