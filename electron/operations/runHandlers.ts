/** A run on site: the visit begun, its steps opened, items answered, photos attached, signed. */
import { findAttachment } from '../../db/attachments.ts';
import { readRunRecord } from '../../db/runRecord.ts';
import { findPhotoLink, findSignOff, isStepOpened, listOpenedSteps } from '../../db/runs.ts';
import { attachmentLinks, runAnswers, runSteps, runs, signOffs } from '../../db/schema/index.ts';
import { findLastSealSha256 } from '../../db/seals.ts';
import { findVisit, isJobOfVisit } from '../../db/visits.ts';
import { requireAnswerable } from './answers.ts';
import { answerWithoutMeter } from './answerWithoutMeter.ts';
import { beginVisit, returnTripOf } from './beginVisit.ts';
import { actorOf, fail, type Handlers, notFound } from './handler.ts';
import { listRunPeople } from './licensing.ts';
import { requireLicensedFor, requireOpenItem, requireOpenRun, requireVisitGoesOn } from './runGuards.ts';
import { findStep, loadRun, readPast, readRunState } from './runState.ts';
import { visitDay } from './visitDay.ts';
import { readVisitRows } from './visitRows.ts';
import { wasLeft } from './wasLeft.ts';

export const runHandlers: Handlers<
  | 'visits.begin'
  | 'visits.beginReturn'
  | 'visits.takeUp'
  | 'visits.getRun'
  | 'visits.getPast'
  | 'visits.openStep'
  | 'visits.answer'
  | 'visits.attachPhoto'
  | 'visits.removePhoto'
  | 'visits.signOff'
> = {
  'visits.begin': (input, context) => {
    const visit = findVisit(context.db, input.visitId) ?? notFound('visits', input.visitId);
    if (visit.state === 'cancelled') return fail('visit-cancelled', {});
    const begun = context.write((writer) => beginVisit(writer, visit, actorOf(context).staffId));
    context.services.changed(['visits', 'runs', 'registrations']);
    return { runs: begun };
  },

  'visits.beginReturn': (input, context) => {
    const ended = findVisit(context.db, input.visitId) ?? notFound('visits', input.visitId);
    if (ended.outcome === null || ended.outcome === 'finished') return fail('no-return-needed', {});
    const actor = actorOf(context);
    const begun = context.write((writer) => {
      const visit = returnTripOf(writer, ended, actor.staffId);
      return { visitId: visit.id, runs: beginVisit(writer, visit, actor.staffId) };
    });
    context.services.changed(['visits', 'jobs', 'runs', 'registrations']);
    return begun;
  },

  'visits.takeUp': (input, context) => {
    const loaded = requireOpenRun(context.db, input);
    const { run } = loaded;
    const visit = findVisit(context.db, input.visitId) ?? notFound('visits', input.visitId);
    requireVisitGoesOn(visit);
    if (!wasLeft(context, visit, loaded)) return { reopenedAt: run.reopenedAt };
    context.write((writer) => writer.update(runs, run.id, { reopenedAt: context.now }));
    context.services.changed(['runs']);
    return { reopenedAt: context.now };
  },

  'visits.getRun': (input, context) => {
    const loaded = loadRun(context.db, input.runId);
    const [visit] = readVisitRows(context.db, { visitId: input.visitId });
    const stored = findVisit(context.db, input.visitId);
    if (visit === undefined || stored === undefined || !isJobOfVisit(context.db, input.visitId, loaded.job.id))
      return notFound('visits', input.visitId);
    const record = readRunRecord(context.db, loaded.run, loaded.job, stored.startedAt);
    return {
      runId: loaded.run.id,
      visitId: visit.visitId,
      visit,
      record,
      sheet: loaded.sheet,
      currentStepKey: loaded.run.currentStepKey,
      openedSteps: [...listOpenedSteps(context.db, loaded.run.id)],
      reopenedAt: loaded.run.reopenedAt,
      sealedSha256: findLastSealSha256(context.db, loaded.run.id),
      people: [...listRunPeople(context.db, record, visitDay(context.db, stored))],
    };
  },

  'visits.getPast': (input, context) => [...readPast(context.db, loadRun(context.db, input.runId))],

  'visits.openStep': (input, context) => {
    const loaded = requireOpenRun(context.db, input);
    const opened = findStep(loaded, input.stepKey);
    if (opened === undefined) return fail('no-such-step', { stepKey: input.stepKey });
    const { staffId } = actorOf(context);
    if (!isStepOpened(context.db, input.runId, input.stepKey)) {
      const { progress } = readRunState(context.db, input.runId, input.visitId, context.now);
      const step = progress.steps.find((one) => one.stepKey === input.stepKey);
      if (step === undefined || step.state === 'locked')
        return fail('step-locked', { locks: [...(step?.lockedBecause ?? [])] });
    }
    context.write((writer) => {
      if (!isStepOpened(writer.db, input.runId, input.stepKey)) {
        writer.insert(runSteps, {
          runId: input.runId,
          stepKey: input.stepKey,
          openedAt: context.now,
          openedById: staffId,
        });
        answerWithoutMeter(writer, input, loaded, opened, staffId);
      }
      writer.update(runs, input.runId, { currentStepKey: input.stepKey });
    });
    context.services.changed(['runs']);
    return {};
  },

  'visits.answer': (input, context) => {
    const checked = requireAnswerable(context, input, actorOf(context).staffId);
    const answer = { ...checked, at: context.now };
    context.write((writer) => writer.insert(runAnswers, answer));
    context.services.changed(['runs']);
    return {};
  },

  'visits.attachPhoto': (input, context) => {
    requireOpenItem(context, { ...input, isLater: true }, 'photo');
    const attachment = findAttachment(context.db, input.attachmentId) ?? notFound('attachments', input.attachmentId);
    if (findPhotoLink(context.db, input.runId, input.itemKey, attachment.id) === undefined) {
      context.write((writer) =>
        writer.insert(attachmentLinks, {
          attachmentId: attachment.id,
          entity: 'runs',
          entityId: input.runId,
          itemKey: input.itemKey,
        }),
      );
      context.services.changed(['runs']);
    }
    return {};
  },

  'visits.removePhoto': (input, context) => {
    requireOpenItem(context, { ...input, isLater: true }, 'photo');
    const link =
      findPhotoLink(context.db, input.runId, input.itemKey, input.attachmentId) ??
      notFound('attachment_links', input.attachmentId);
    context.write((writer) => writer.update(attachmentLinks, link.id, { removedAt: context.now }));
    context.services.changed(['runs']);
    return {};
  },

  'visits.signOff': (input, context) => {
    const { loaded, item } = requireOpenItem(context, input, 'sign-off');
    const actor = actorOf(context);
    if (item.by === 'licensed') requireLicensedFor(context.db, loaded, input.visitId, actor.staffId);
    context.write((writer) => {
      const row = {
        // Whoever is licensed signs as who is signed in, whatever name was sent.
        name: item.by === 'licensed' ? actor.name : input.name,
        staffId: item.by === 'licensed' ? actor.staffId : null,
        at: context.now,
        signatureAttachmentId: input.signatureAttachmentId,
      };
      const existing = findSignOff(writer.db, input.runId, input.itemKey);
      if (existing === undefined)
        writer.insert(signOffs, { runId: input.runId, itemKey: input.itemKey, by: item.by, ...row });
      else writer.update(signOffs, existing.id, row);
    });
    context.services.changed(['runs']);
    return {};
  },
};
