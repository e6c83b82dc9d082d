/** Proposing, watching, stopping and accepting a plan, and offering slots to somebody on the phone. */
import type { ReadableDb } from '../../db/openStore.ts';
import { findCompany } from '../../db/people.ts';
import { visitCrew, visitJobs, visits } from '../../db/schema/index.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { findVisit, listCrews, listJobs } from '../../db/visits.ts';
import { checkRoutes } from '../../domain/schedule/check/checkRoutes.ts';
import { daysBetween } from '../../domain/schedule/dayMinutes.ts';
import { explainUnplanned } from '../../domain/schedule/explainUnplanned.ts';
import { insertSlots } from '../../domain/schedule/insertSlots.ts';
import { isForbidding, type Obstacle, qualificationObstacles } from '../../domain/schedule/obstacles.ts';
import { offerWindows } from '../../domain/schedule/offerWindows.ts';
import { LATE_BASE, type Placement, type Plan, placementsOf } from '../../domain/schedule/plan.ts';
import { type PlanMove, planMoves } from '../../domain/schedule/planMoves.ts';
import { findShortages, type Outing } from '../../domain/schedule/sharedInstruments.ts';
import { UNKNOWN_WAY_MIN } from '../../domain/schedule/travelMatrix.ts';
import type { UnplannedReason } from '../../domain/schedule/unplannedReason.ts';
import type { OutputOf, ParsedInputOf } from '../contract/index.ts';
import type { LeftOut, LeftOutReason, PlanMode, ProposedMove } from '../contract/planning.ts';
import { type Crew, replaceCrew, requireLicensedCrew, requireNotBegun, requireUnchanged } from './bookingHandlers.ts';
import { fail, type HandlerContext, type Handlers, notFound } from './handler.ts';
import type { PlanRun } from './planRuns.ts';
import {
  currentRoutes,
  jobsOf,
  type PlanningBasis,
  type PlanningQuestion,
  type PlanSource,
  readPlanningProblem,
  toWallMinute,
} from './readPlanningProblem.ts';
import { type DoneMove, takeBackMove } from './takeBackMove.ts';
import { dayIn } from './today.ts';

/** What a proposal was made from, and how to ask for it again. */
export type ProposalBasis = PlanningBasis & { readonly question: PlanningQuestion; readonly mode: PlanMode };

const MOST_DAYS = 21;
/** Where the clock sets the limit. */
const ROUNDS_WITHOUT_END = 100_000_000;

export const planningHandlers: Handlers<
  | 'planning.propose'
  | 'planning.status'
  | 'planning.cancel'
  | 'planning.accept'
  | 'planning.takeBack'
  | 'planning.slots'
> = {
  'planning.propose': (input, context) => {
    const { from, to } = openRange(context, input);
    const question: PlanningQuestion = {
      from,
      to,
      now: context.now,
      holdsPlaced: input.mode === 'fill',
      jobIds: input.mode === 'repair' ? [] : null,
      takesNotReady: input.takesNotReady,
      takesSeveralDays: true,
    };
    const basis: ProposalBasis = { ...readPlanningProblem(context.db, question), question, mode: input.mode };
    const limitMs = input.seconds * 1000;
    const order = {
      problem: basis.problem,
      isRepair: input.mode === 'repair',
      current: { routes: currentRoutes(basis) },
      seed: input.seed,
      maxRounds: input.maxRounds ?? ROUNDS_WITHOUT_END,
      limitMs: input.maxRounds === null ? limitMs : null,
    };
    return context.services.plans.start(basis, limitMs, order, () => context.services.changed(['planning']));
  },

  'planning.status': (input, context) => describe(findRun(context, input.proposalId)),

  'planning.cancel': (input, context) => {
    findRun(context, input.proposalId);
    context.services.plans.cancel(input.proposalId);
    return {};
  },

  'planning.accept': (input, context) => {
    const run = findRun(context, input.proposalId);
    if (run.plan === null || run.state === 'running') return fail('proposal-running', {});
    const moves = planMoves(run.basis.current, run.plan);
    const done = context.write((writer) => {
      requireSameBasis(writer.db, run, moves, context.now);
      return moves.flatMap(({ visitId, to }) => {
        const source = run.basis.sources.get(visitId);
        return source === undefined ? [] : [carryOut(writer, source, to, run.basis)];
      });
    });
    context.services.plans.accepted(input.proposalId, done);
    context.services.changed(['visits', 'jobs', 'planning']);
    const booked = done.filter(({ before }) => before === null).length;
    return { moved: done.length - booked, booked };
  },

  'planning.takeBack': (input, context) => {
    const done = context.services.plans.findAccepted(input.proposalId) ?? notFound('proposals', input.proposalId);
    context.write((writer) => {
      for (const move of done) takeBackMove(writer, move);
    });
    context.services.plans.forget(input.proposalId);
    context.services.changed(['visits', 'jobs', 'planning']);
    const cancelled = done.filter(({ before }) => before === null).length;
    return { movedBack: done.length - cancelled, cancelled };
  },

  'planning.slots': (input, context) => {
    const { from, to } = openRange(context, input);
    const basis = readPlanningProblem(context.db, {
      from,
      to,
      now: context.now,
      holdsPlaced: true,
      jobIds: [input.jobId],
      takesNotReady: true,
      takesSeveralDays: false,
    });
    const job = basis.sources.get(input.jobId);
    if (job?.kind !== 'job') return notFound('jobs', input.jobId);
    const durationMin = input.durationMin ?? job.job.suggestedMin;
    const problem = {
      ...basis.problem,
      visits: basis.problem.visits.map((visit) => (visit.visitId === input.jobId ? { ...visit, durationMin } : visit)),
    };
    const board = { routes: currentRoutes(basis) };
    const found = offerWindows(insertSlots(problem, board, input.jobId, input.count), input.count);
    const names = new Map(basis.technicians.map((one) => [one.staffId, one.name]));
    return {
      durationMin,
      slots: found.map((slot) => ({
        staffId: slot.technicianId,
        name: names.get(slot.technicianId) ?? '',
        date: slot.date,
        fromMin: toWallMinute(slot.date, slot.fromMin, basis.timeZone),
        toMin: toWallMinute(slot.date, slot.toMin, basis.timeZone),
        extraTravelMin: slot.extraTravelMin,
        toWeigh: toWeigh(basis, job, slot),
        isLate: slot.daysLateKey >= LATE_BASE,
        isAfterOther: slot.afterVisitId !== null,
        isBeforeOther: slot.beforeVisitId !== null,
      })),
      reasons:
        found.length > 0
          ? []
          : reasonsOf(basis, input.jobId, explainUnplanned(problem, board, input.jobId)?.reasons ?? []),
    };
  },
};

/** Nothing is planned into the past: the range begins today at the earliest. */
function openRange(
  context: HandlerContext,
  input: Pick<ParsedInputOf<'planning.propose'>, 'from' | 'to'>,
): { readonly from: string; readonly to: string } {
  if (input.to < input.from) return fail('dates-reversed', { fromOn: input.from, toOn: input.to });
  const today = dayIn((findCompany(context.db) ?? notFound('companies', 'this')).timeZone, context.now);
  if (input.to < today) return fail('range-in-past', { today });
  const [from = today] = [input.from, today].toSorted().reverse();
  return daysBetween(from, input.to) < MOST_DAYS
    ? { from, to: input.to }
    : fail('range-too-long', { mostDays: MOST_DAYS });
}

function findRun(context: HandlerContext, proposalId: string): PlanRun<ProposalBasis> {
  return context.services.plans.find(proposalId) ?? notFound('proposals', proposalId);
}

function describe(run: PlanRun<ProposalBasis>): OutputOf<'planning.status'> {
  const { basis, plan } = run;
  const { sources, problem, timeZone } = basis;
  const notes = new Map(run.notes.map((note) => [note.visitId, note]));
  const byId = new Map(problem.visits.map((visit) => [visit.visitId, visit]));
  const wall = (at: Placement) => ({
    staffId: at.technicianId,
    date: at.date,
    startMin: toWallMinute(at.date, at.startMin, timeZone),
  });
  const moves = (plan === null ? [] : planMoves(basis.current, plan)).flatMap(
    ({ visitId, from, to }): ProposedMove[] => {
      const source = sources.get(visitId);
      const promised = byId.get(visitId)?.promised ?? null;
      if (source === undefined) return [];
      const keeps =
        promised === null ||
        (promised.date === to.date && promised.fromMin <= to.startMin && to.startMin <= promised.toMin);
      const note = notes.get(visitId);
      return [
        {
          ...whatOf(source),
          from: from === null ? null : wall(from),
          to: wall(to),
          movesPromise: !keeps,
          toWeigh: toWeigh(basis, source, to),
          ground: note === undefined ? null : isPart(source) ? 'days-in-a-row' : note.ground,
          extraTravelMin: note?.extraTravelMin ?? null,
        },
      ];
    },
  );
  const leftOut = [...(plan?.unplanned ?? []), ...basis.standing].flatMap(({ visitId, reasons }): LeftOut[] => {
    const source = sources.get(visitId);
    if (source === undefined) return [];
    const booked = source.kind === 'visit' ? { date: source.visit.plannedOn, startMin: source.visit.startMin } : null;
    return [{ ...whatOf(source), booked, reasons: reasonsOf(basis, visitId, reasons) }];
  });
  for (const job of basis.notReady)
    leftOut.push({
      ...whatOf({ kind: 'job', job, part: null }),
      booked: null,
      reasons: [{ code: 'not-ready', items: job.openReadiness }],
    });
  const [
    ,
    deadlines = 0,
    daysOutside = 0,
    promisesMoved = 0,
    wishesLacking = 0,
    travelMin = 0,
    overtimeAndIdleMin = 0,
    imbalanceMin = 0,
  ] = plan?.score ?? [];
  return {
    proposalId: run.proposalId,
    mode: basis.mode,
    from: basis.question.from,
    to: basis.question.to,
    state: run.state,
    rounds: run.rounds,
    elapsedMs: run.elapsedMs,
    seconds: Math.round(run.limitMs / 1000),
    goals:
      plan === null
        ? null
        : {
            leftOut: plan.unplanned.length + basis.standing.length,
            daysLate: Math.floor(deadlines / LATE_BASE),
            daysClose: deadlines % LATE_BASE,
            daysOutside,
            promisesMoved,
            wishesLacking,
            travelMin,
            overtimeAndIdleMin,
            imbalanceMin,
          },
    placedCount: plan === null ? 0 : placementsOf(plan).size,
    moves,
    leftOut,
    assumedWays: { placeCount: basis.assumedPlaces, minutes: UNKNOWN_WAY_MIN },
    shortages: plan === null ? [] : [...findShortages(outingsOf(basis, plan), basis.technicians)],
    staff: basis.technicians.map(({ staffId, name }) => ({ staffId, name })),
  };
}

/** With what is booked already: everybody's days as they would be. */
function outingsOf({ sources }: PlanningBasis, plan: Plan): readonly Outing[] {
  return [...placementsOf(plan)].flatMap(([visitId, { technicianId, date }]) => {
    const source = sources.get(visitId);
    const kinds = source === undefined ? [] : jobsOf(source).flatMap((job) => job.instruments);
    return kinds.length === 0 ? [] : [{ on: date, staffId: technicianId, kinds }];
  });
}

/** The plan keeps to what forbids; the rest is for a person to weigh before the plan is accepted. */
function toWeigh(
  { technicians }: PlanningBasis,
  source: PlanSource,
  at: Pick<Placement, 'technicianId' | 'date'>,
): Obstacle[] {
  const person = technicians.find(({ staffId }) => staffId === at.technicianId);
  return person === undefined
    ? []
    : qualificationObstacles(person, jobsOf(source), at.date).filter((obstacle) => !isForbidding(obstacle));
}

function whatOf(
  source: PlanSource,
): Pick<LeftOut, 'ref' | 'part' | 'customerName' | 'street' | 'city' | 'jobKinds' | 'durationMin' | 'openMakeSafes'> {
  const openMakeSafes = jobsOf(source).reduce((sum, job) => sum + job.openMakeSafes, 0);
  if (source.kind === 'job') {
    const { jobId, customerName, street, city, kind, suggestedMin } = source.job;
    const { part } = source;
    return {
      ref: { kind: 'job', id: jobId },
      part: part === null ? null : { number: part.number, of: part.of },
      customerName,
      street,
      city,
      jobKinds: [kind],
      durationMin: part?.durationMin ?? suggestedMin,
      openMakeSafes,
    };
  }
  const { visitId, customerName, street, city, jobs, durationMin } = source.visit;
  return {
    ref: { kind: 'visit', id: visitId },
    part: null,
    customerName,
    street,
    city,
    jobKinds: jobs.map((job) => job.kind),
    durationMin,
    openMakeSafes,
  };
}

/**
 * What the proposal touches is as it was, and the rules still hold: licences, hours and absences of today, and no visit
 * that came onto one of its days meanwhile.
 */
function requireSameBasis(db: ReadableDb, run: PlanRun<ProposalBasis>, moves: readonly PlanMove[], now: string): void {
  const { sources, question } = run.basis;
  for (const { visitId, to } of moves) {
    const source = sources.get(visitId);
    if (source === undefined) continue;
    if (source.kind === 'visit') {
      requireUnchanged(db, requireNotBegun(db, visitId), source.visit.revision);
    } else {
      const [row] = listJobs(db, { applianceId: null, jobIds: [source.job.jobId], isWaiting: true });
      if (row === undefined) fail('job-changed', { jobId: source.job.jobId });
    }
    requireLicensedCrew(db, jobIdsOf(source), to.date, [{ staffId: to.technicianId, role: 'licensed' }]);
  }
  const fresh = readPlanningProblem(db, { ...question, now });
  const days = new Set(moves.map(({ to }) => `${to.technicianId} ${to.date}`));
  const newcomer = [...fresh.current].find(
    ([visitId, at]) => !sources.has(visitId) && days.has(`${at.technicianId} ${at.date}`),
  );
  const touched = (run.plan?.routes ?? []).filter((route) => days.has(`${route.technicianId} ${route.date}`));
  const violations = checkRoutes(fresh.problem, { routes: touched }).map((violation) => violation.code);
  const problems = newcomer === undefined ? violations : ['other-visit-there', ...violations];
  if (problems.length > 0) fail('plan-outdated', { problems: [...new Set(problems)] });
}

function isPart(source: PlanSource): boolean {
  return source.kind === 'job' && source.part !== null;
}

/** Of what is longer than a day, that says more than that no day is long enough. */
function reasonsOf({ longer }: PlanningBasis, visitId: string, reasons: readonly UnplannedReason[]): LeftOutReason[] {
  return longer.has(visitId) ? [{ code: 'no-days-in-a-row' }] : [...reasons];
}

function jobIdsOf(source: PlanSource): readonly string[] {
  return source.kind === 'job' ? [source.job.jobId] : source.visit.jobs.map((job) => job.jobId);
}

function carryOut(writer: StoreWriter, source: PlanSource, to: Placement, basis: ProposalBasis): DoneMove {
  const startMin = toWallMinute(to.date, to.startMin, basis.timeZone);
  if (source.kind === 'job') {
    const { job } = source;
    const isReady = job.kind !== 'startup' || job.openReadiness.length === 0;
    const visitId = writer.insert(visits, {
      siteId: job.siteId,
      state: isReady ? 'planned' : 'pencilled',
      plannedOn: to.date,
      startMin,
      durationMin: source.part?.durationMin ?? job.suggestedMin,
    });
    writer.insert(visitJobs, { visitId, jobId: job.jobId });
    writer.insert(visitCrew, { visitId, staffId: to.technicianId, role: 'licensed' });
    return { visitId, revision: 0, before: null };
  }
  const { visitId } = source.visit;
  const visit = findVisit(writer.db, visitId) ?? notFound('visits', visitId);
  const revision = visit.revision + 1;
  writer.update(visits, visitId, { plannedOn: to.date, startMin, revision });
  // A crew of several is pinned; only the one person of a visit is ever exchanged.
  const crew: Crew = listCrews(writer.db, [visitId]).map((row) => ({
    staffId: row.crew.staffId,
    role: row.crew.role as Crew[number]['role'],
  }));
  const [only] = crew;
  if (crew.length <= 1 && only?.staffId !== to.technicianId)
    replaceCrew(writer, visitId, [{ staffId: to.technicianId, role: only?.role ?? 'licensed' }]);
  return { visitId, revision, before: { plannedOn: visit.plannedOn, startMin: visit.startMin, crew } };
}
