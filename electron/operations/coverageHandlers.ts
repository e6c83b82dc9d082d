/** An appliance's cover as its sheet states it, and what the record shows of the conditions. */
import { findAppliance } from '../../db/appliances.ts';
import { findTransferNotice } from '../../db/coverEvents.ts';
import { readCoverEvidence } from '../../db/dues/readCoverEvidence.ts';
import { readDueFacts } from '../../db/dues/readDueFacts.ts';
import { transferNotices } from '../../db/schema/index.ts';
import { getRevisionById } from '../../db/sheets.ts';
import { applianceCover } from '../../domain/coverage/applianceCover.ts';
import { actorOf, type Handlers, notFound } from './handler.ts';
import { dayIn } from './today.ts';

export const coverageHandlers: Handlers<'coverage.get' | 'coverage.recordTransfer'> = {
  'coverage.get': (input, context) => {
    const appliance = findAppliance(context.db, input.applianceId);
    const [source] = readDueFacts(context.store.raw, [input.applianceId], context.now);
    if (appliance === undefined || source === undefined) return notFound('appliances', input.applianceId);
    const { timeZone, ...evidence } = readCoverEvidence(context.store.raw, input.applianceId);
    const today = dayIn(timeZone, context.now);
    const { coverRevision: chosen } = source;
    const sheet = chosen === null ? null : getRevisionById(context.db, chosen.id);
    return {
      cover: applianceCover({ ...source.facts, ...evidence, today }),
      today,
      sheet:
        sheet === null || chosen === null
          ? null
          : { title: sheet.title, revision: sheet.revision, reason: chosen.reason },
    };
  },

  'coverage.recordTransfer': (input, context) => {
    if (findAppliance(context.db, input.applianceId) === undefined) return notFound('appliances', input.applianceId);
    const byId = actorOf(context).staffId;
    context.write((writer) => {
      const existing = findTransferNotice(writer.db, input.applianceId, input.changedOn);
      if (existing === undefined) writer.insert(transferNotices, { ...input, byId });
      else writer.update(transferNotices, existing, { ...input, byId });
    });
    context.services.changed(['appliances']);
    return {};
  },
};
