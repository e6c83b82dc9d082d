/** What takes time: holds, the burner's tuning run and reaching a firing point. Only starts and ends are stored. */
import { findLatestHold, findRunningTuning, listTuningStages } from '../../db/runs.ts';
import { firingPointMarks, runHolds, runTunings, tuningStages } from '../../db/schema/index.ts';
import { actorOf, fail, type HandlerContext, type Handlers } from './handler.ts';
import { type ItemRef, requireOpenItem, requireOpenStep, requireWhoDidIt } from './runGuards.ts';

export const waitHandlers: Handlers<
  | 'visits.startHold'
  | 'visits.endHold'
  | 'visits.startTuning'
  | 'visits.reachTuningStage'
  | 'visits.finishTuning'
  | 'visits.interruptTuning'
  | 'visits.reachFiringPoint'
> = {
  'visits.startHold': (input, context) => {
    const { loaded, step, item } = requireOpenItem(context, input, 'hold');
    const actor = actorOf(context);
    requireWhoDidIt(context.db, loaded, step, input.visitId, actor.staffId);
    const running = findLatestHold(context.db, input.runId, input.itemKey);
    if (running !== undefined && running.endedAt === null)
      return fail('hold-running', { startedAt: running.startedAt });
    context.write((writer) =>
      writer.insert(runHolds, {
        runId: input.runId,
        itemKey: input.itemKey,
        startedAt: context.now,
        requiredS: item.seconds,
        hasClockJumped: false,
        bootId: context.services.bootId,
        startedSteadyMs: context.services.steadyClockMs(),
        byId: actor.staffId,
      }),
    );
    context.services.changed(['runs']);
    return { startedAt: context.now };
  },

  'visits.endHold': (input, context) => {
    requireOpenItem(context, input, 'hold');
    const hold = findLatestHold(context.db, input.runId, input.itemKey);
    if (hold === undefined || hold.endedAt !== null) return fail('hold-not-running', {});
    const ranS = (Date.parse(context.now) - Date.parse(hold.startedAt)) / 1000;
    const steadyS = steadySecondsSince(hold, context);
    const hasClockJumped = ranS < 0 || (steadyS !== null && Math.abs(ranS - steadyS) > CLOCK_JUMP_S);
    if (!hasClockJumped && ranS < hold.requiredS)
      return fail('hold-not-over', { leftS: Math.ceil(hold.requiredS - ranS) });
    context.write((writer) => writer.update(runHolds, hold.id, { endedAt: context.now, hasClockJumped }));
    context.services.changed(['runs']);
    return { isProven: !hasClockJumped };
  },

  'visits.startTuning': (input, context) => {
    const { loaded, step } = requireOpenItem(context, input, 'tuning');
    const actor = actorOf(context);
    requireWhoDidIt(context.db, loaded, step, input.visitId, actor.staffId);
    const running = findRunningTuning(context.db, input.runId, input.itemKey);
    if (running !== undefined) return fail('tuning-running', { startedAt: running.startedAt });
    context.write((writer) =>
      writer.insert(runTunings, {
        runId: input.runId,
        itemKey: input.itemKey,
        startedAt: context.now,
        byId: actor.staffId,
      }),
    );
    context.services.changed(['runs']);
    return { startedAt: context.now };
  },

  'visits.reachTuningStage': (input, context) => {
    const { tuningId, missing } = runningTuning(input, context, 'licensed');
    const expected = missing[0] ?? null;
    if (input.stageKey !== expected) return fail('stage-out-of-order', { expected });
    context.write((writer) =>
      writer.insert(tuningStages, { tuningId, stageKey: input.stageKey, reachedAt: context.now }),
    );
    context.services.changed(['runs']);
    return {};
  },

  'visits.finishTuning': (input, context) => {
    const { tuningId, missing } = runningTuning(input, context, 'licensed');
    if (missing.length > 0) return fail('stages-missing', { stages: [...missing] });
    context.write((writer) => writer.update(runTunings, tuningId, { finishedAt: context.now }));
    context.services.changed(['runs']);
    return {};
  },

  'visits.interruptTuning': (input, context) => {
    // That it was broken off anybody may say.
    const { tuningId } = runningTuning(input, context, 'anyone');
    context.write((writer) =>
      writer.update(runTunings, tuningId, { interruptedAt: context.now, interruptedReason: input.reason }),
    );
    context.services.changed(['runs']);
    return {};
  },

  'visits.reachFiringPoint': (input, context) => {
    const { loaded, step } = requireOpenStep(context, input);
    const actor = actorOf(context);
    requireWhoDidIt(context.db, loaded, step, input.visitId, actor.staffId);
    if (!loaded.sheet.firingPoints.some((point) => point.key === input.firingPoint)) {
      return fail('no-such-item', { stepKey: input.stepKey, itemKey: input.firingPoint });
    }
    context.write((writer) =>
      writer.insert(firingPointMarks, {
        runId: input.runId,
        firingPoint: input.firingPoint,
        reachedAt: context.now,
        byId: actor.staffId,
      }),
    );
    context.services.changed(['runs']);
    return { reachedAt: context.now };
  },
};

/** Laptop clocks drift and are corrected by fractions of a second; a jump is more than this. */
const CLOCK_JUMP_S = 5;

/** null: the machine was restarted in between, so the steady clock cannot tell. */
function steadySecondsSince(
  hold: { readonly bootId: string; readonly startedSteadyMs: number },
  context: HandlerContext,
): number | null {
  if (hold.bootId !== context.services.bootId) return null;
  return (context.services.steadyClockMs() - hold.startedSteadyMs) / 1000;
}

function runningTuning(
  input: ItemRef,
  context: HandlerContext,
  who: 'licensed' | 'anyone',
): { readonly tuningId: string; readonly missing: readonly string[] } {
  const { loaded, step, item } = requireOpenItem(context, input, 'tuning');
  if (who === 'licensed') requireWhoDidIt(context.db, loaded, step, input.visitId, actorOf(context).staffId);
  const tuning = findRunningTuning(context.db, input.runId, input.itemKey);
  if (tuning === undefined) return fail('tuning-not-running', {});
  const reached = new Set(listTuningStages(context.db, tuning.id).map((row) => row.stageKey));
  return { tuningId: tuning.id, missing: item.stages.map((stage) => stage.key).filter((key) => !reached.has(key)) };
}
