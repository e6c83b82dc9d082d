/** Paper in place of the laptop: printing what is left of a run, and keeping what was written as copied from paper. */
import { Temporal } from 'temporal-polyfill';
import { findCompany, findStaff } from '../../db/people.ts';
import { findSignOff, findTranscription } from '../../db/runs.ts';
import {
  firingPointMarks,
  fittedParts,
  runAnswers,
  runHolds,
  runLockouts,
  runTunings,
  signOffs,
  type TRANSCRIBED_ENTITIES,
  transcriptions,
  tuningStages,
} from '../../db/schema/index.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { findVisit } from '../../db/visits.ts';
import { COPIED_ANSWER } from '../../domain/procedure/progress/listProgress.ts';
import type { UnitSystem } from '../../domain/quantity/preferredUnit.ts';
import type { ParsedInputOf } from '../contract/index.ts';
import { weekdayText } from '../documents/documentDates.ts';
import { paperBlocks } from '../documents/paper/paperBlocks.ts';
import { requireAnswerable } from './answers.ts';
import { actorOf, fail, type HandlerContext, type Handlers, notFound } from './handler.ts';
import { keepPdf } from './outputHandlers.ts';
import { readTyped, requireInstrument, requirePlace, storeReading } from './readingHandlers.ts';
import { requireLockout, requirePart } from './repairRows.ts';
import { requireLicensedFor, requireOpenItem, requireWhoDidIt } from './runGuards.ts';
import { readRunState, stepsOf } from './runState.ts';
import { dayIn } from './today.ts';
import { readVisitRows } from './visitRows.ts';

export const paperHandlers: Handlers<'paper.print' | 'paper.transcribe'> = {
  'paper.print': async (input, context) => {
    const [visit] = readVisitRows(context.db, { visitId: input.visitId });
    if (visit === undefined) return notFound('visits', input.visitId);
    const state = readRunState(context.db, input.runId, input.visitId, context.now);
    const company = findCompany(context.db) ?? notFound('companies', 'this');
    const openItems = new Set(
      state.progress.steps.flatMap((step) =>
        step.items.flatMap((item) =>
          item.state === 'answered' || item.state === 'not-possible' ? [] : [item.itemKey],
        ),
      ),
    );
    const { serial, maker, model } = state.record.appliance;
    const title = `What is left: ${serial}, ${weekdayText(visit.plannedOn)}`;
    const attachmentId = await keepPdf(context, {
      title,
      fileName: `paper-${serial.replaceAll(/[^A-Za-z0-9-]/g, '')}-${visit.plannedOn}.pdf`,
      subject: 'paper',
      blocks: paperBlocks({
        title: `${maker} ${model}, ${serial}`,
        where: `${visit.customerName}, ${visit.street}, ${visit.city}`,
        sheet: state.sheet,
        fuel: state.record.fuel,
        steps: stepsOf(state),
        openItems,
        unitSystem: company.unitSystem as UnitSystem,
      }),
    });
    return { attachmentId, openItems: openItems.size };
  },

  'paper.transcribe': (input, context) => {
    const by = findStaff(context.db, input.byId) ?? notFound('staff', input.byId);
    const keep = keeperOf({ ...input, isLater: true, byName: by.name }, context);
    context.write((writer) => {
      const kept = keep(writer);
      if (kept === null) return;
      writer.insert(transcriptions, {
        runId: input.runId,
        ...kept,
        typedById: actorOf(context).staffId,
        typedAt: context.now,
      });
    });
    context.services.changed(['runs']);
    return {};
  },
};

type Input = ParsedInputOf<'paper.transcribe'> & { readonly isLater: true; readonly byName: string };
/** The row to mark as copied; null: it says so itself. */
type Kept = { readonly entity: (typeof TRANSCRIBED_ENTITIES)[number]; readonly rowId: string } | null;
type Keeper = (writer: StoreWriter) => Kept;

/** Everything is checked before the first row is written. */
function keeperOf(input: Input, context: HandlerContext): Keeper {
  const { written, runId, itemKey, byId } = input;
  const at = clockOf(input, context);
  switch (written.kind) {
    case 'answer': {
      const { value, reason } = written;
      const answer = requireAnswerable(context, { ...input, value, reason, instrumentId: null }, byId);
      const given = { ...answer, at: at(written.at) };
      return (writer) => ({ entity: 'run_answers', rowId: writer.insert(runAnswers, given) });
    }
    case 'reading': {
      const place = requirePlace(context, { ...input, ...written }, { measuredById: byId });
      requireInstrument(context, written.instrumentId);
      const typed = {
        ...readTyped(place.quantity, written),
        instrumentId: written.instrumentId,
        measuredAt: at(written.at),
        origin: 'transcribed' as const,
      };
      return (writer) => {
        storeReading(writer, place, typed);
        return null;
      };
    }
    case 'firing-point': {
      const { item } = requireDone(input, context, 'series');
      const mark = { runId, firingPoint: item.firingPoint, reachedAt: at(written.at), byId };
      return (writer) => ({ entity: 'firing_point_marks', rowId: writer.insert(firingPointMarks, mark) });
    }
    case 'hold': {
      const { item } = requireDone(input, context, 'hold');
      const hold = {
        runId,
        itemKey,
        startedAt: at(written.startedAt),
        endedAt: notBefore(at(written.endedAt), at(written.startedAt), { on: input.on, at: written.endedAt }),
        requiredS: item.seconds,
        hasClockJumped: false,
        bootId: 'paper',
        startedSteadyMs: 0,
        byId,
      };
      return (writer) => ({ entity: 'run_holds', rowId: writer.insert(runHolds, hold) });
    }
    case 'tuning': {
      const { item } = requireDone(input, context, 'tuning');
      const missing = item.stages.filter(({ key }) => !written.stages.some((stage) => stage.stageKey === key));
      if (missing.length > 0) return fail('stages-missing', { stages: missing.map(({ key }) => key) });
      const startedAt = at(written.startedAt);
      const finishedAt = notBefore(at(written.finishedAt), startedAt, { on: input.on, at: written.finishedAt });
      const stages = item.stages.map(({ key }) => ({
        stageKey: key,
        reachedAt: at(written.stages.find((stage) => stage.stageKey === key)?.at ?? written.startedAt),
      }));
      return (writer) => {
        const tuningId = writer.insert(runTunings, { runId, itemKey, startedAt, finishedAt, byId });
        for (const stage of stages) writer.insert(tuningStages, { tuningId, ...stage });
        return { entity: 'run_tunings', rowId: tuningId };
      };
    }
    case 'sign-off': {
      const { loaded, item } = requireOpenItem(context, input, 'sign-off');
      if (item.by === 'licensed') requireLicensedFor(context.db, loaded, input.visitId, byId);
      const signer =
        item.by === 'licensed'
          ? { name: requireOwnName(written.name, input.byName), staffId: byId }
          : { name: written.name, staffId: null };
      const row = { ...signer, at: at(written.at) };
      return (writer) => {
        const existing = findSignOff(writer.db, runId, itemKey);
        if (existing === undefined) {
          return { entity: 'sign_offs', rowId: writer.insert(signOffs, { runId, itemKey, by: item.by, ...row }) };
        }
        // The drawing under the name before belongs to the person of before.
        const isSamePerson = existing.name === row.name && existing.staffId === row.staffId;
        writer.update(signOffs, existing.id, isSamePerson ? row : { ...row, signatureAttachmentId: null });
        return findTranscription(writer.db, existing.id) === undefined
          ? { entity: 'sign_offs', rowId: existing.id }
          : null;
      };
    }
    case 'part': {
      const row = requirePart(context, { ...input, ...written }, { byId, at: at(written.at), on: input.on });
      return (writer) => {
        const lineId = writer.insert(fittedParts, row);
        return copiedLine(writer, input, lineId, row.recordedAt ?? context.now, [row.name, row.partNumber, row.serial]);
      };
    }
    case 'lockout': {
      const row = requireLockout(context, { ...input, ...written }, { byId, at: at(written.at) });
      const { happenedOn, happenedAt, code } = written;
      return (writer) => {
        const lineId = writer.insert(runLockouts, row);
        return copiedLine(writer, input, lineId, row.recordedAt, [`${happenedOn} ${happenedAt}`, code]);
      };
    }
  }
}

/** A licence is signed under by whom it belongs to: another name on the paper is somebody else's signature. */
function requireOwnName(written: string, name: string): string {
  const plain = (text: string) => text.trim().replaceAll(/\s+/g, ' ').toLowerCase();
  return plain(written) === plain(name) ? name : fail('signed-by-another', { written, name });
}

/**
 * A list has no mark of its own for each line: the line is named beside it, by whom and when it was written. The mark has the
 * line's own id, so that it goes with the line.
 */
function copiedLine(
  writer: StoreWriter,
  input: Input,
  id: string,
  at: string,
  words: readonly (string | null | undefined)[],
): Kept {
  const { visitId, runId, stepKey, itemKey, byId } = input;
  const reason = words.filter((word) => word != null && word !== '').join(', ');
  const answer = { id, visitId, runId, stepKey, itemKey, value: COPIED_ANSWER, reason, instrumentId: null, byId, at };
  return { entity: 'run_answers', rowId: writer.insert(runAnswers, answer) };
}

function requireDone<K extends 'series' | 'hold' | 'tuning'>(input: Input, context: HandlerContext, kind: K) {
  const found = requireOpenItem(context, input, kind);
  requireWhoDidIt(context.db, found.loaded, found.step, input.visitId, input.byId);
  return found;
}

/** A paper's clock is read to the minute: what was written this very minute is not in the future. */
const MINUTE_MS = 60_000;

/** Turns times of day written at the site into instants, and refuses those that cannot have been. */
function clockOf(input: Input, context: HandlerContext): (time: string) => string {
  const { record } = readRunState(context.db, input.runId, input.visitId, context.now);
  const { timeZone } = record.site;
  const visit = findVisit(context.db, input.visitId) ?? notFound('visits', input.visitId);
  const earliestOn = [visit.plannedOn, dayIn(timeZone, visit.startedAt ?? context.now)].sort()[0] ?? visit.plannedOn;
  return (time) => {
    const moment = Temporal.PlainDateTime.from(`${input.on}T${time}`).toZonedDateTime(timeZone);
    const isPossible = input.on >= earliestOn && moment.epochMilliseconds <= Date.parse(context.now) + MINUTE_MS;
    return isPossible
      ? new Date(moment.epochMilliseconds).toISOString()
      : fail('time-not-possible', { on: input.on, at: time });
  };
}

function notBefore(end: string, start: string, written: { readonly on: string; readonly at: string }): string {
  return end >= start ? end : fail('time-not-possible', written);
}
