/** Messages about notices. Safety is not marketing: they go out whatever was agreed to (from memory, no source). */
import { findParties } from '../../../db/dues/parties.ts';
import { findRecall, listRecallOutcomes, type RecallRecord } from '../../../db/recalls.ts';
import type { MessageLanguage } from '../../../domain/messages/messageKinds.ts';
import { noticeApplies } from '../../../domain/messages/noticeApplies.ts';
import type { ReadContext } from '../handler.ts';
import { readAffected } from '../recalls/readAffected.ts';
import { type MessageSubject, postalAddressOf, siteText } from './messageSubject.ts';

/** `recall … …`: the notice, then the appliance. */
export function recallSubjects(context: ReadContext, keys: readonly string[]): readonly MessageSubject[] {
  const wanted = new Set(keys);
  const recallIds = [...new Set(keys.map((key) => key.split(' ')[1] ?? ''))];
  return recallIds.flatMap((recallId) => standingNotices(context, recallId)).filter(({ key }) => wanted.has(key));
}

/** Of every appliance with an owner on file for which nothing has been settled yet. */
export function standingNotices(context: ReadContext, recallId: string): readonly MessageSubject[] {
  const recall = findRecall(context.db, recallId);
  if (recall === undefined || recall.closedOn !== null) return [];
  const settled = listRecallOutcomes(context.db, recallId);
  const affected = readAffected(context.store.raw, recall).filter(({ applianceId }) => !settled.has(applianceId));
  const parties = findParties(
    context.db,
    affected.flatMap(({ partyId }) => partyId ?? []),
  );
  return affected.flatMap((row) => {
    const party = row.partyId === null ? undefined : parties.get(row.partyId);
    return party === undefined || party.erasedAt !== null ? [] : [toSubject(recall, row, party)];
  });
}

function toSubject(
  recall: RecallRecord,
  row: ReturnType<typeof readAffected>[number],
  party: NonNullable<ReturnType<ReturnType<typeof findParties>['get']>>,
): MessageSubject {
  const applianceName = `${row.maker} ${row.model}`;
  return {
    key: `recall ${recall.id} ${row.applianceId}`,
    kind: 'recall',
    partyId: party.id,
    partyName: party.name,
    language: party.language as MessageLanguage | null,
    email: party.email,
    phone: party.phoneTyped,
    postalAddress: postalAddressOf(party, row),
    applianceId: row.applianceId,
    visitId: null,
    recallId: recall.id,
    aboutOn: recall.issuedOn,
    applianceName,
    serial: row.serial,
    site: siteText(row),
    mayUse: () => true,
    sendOn: null,
    valuesIn: (language) => ({
      noticeTitle: recall.number === null ? recall.title : `${recall.title} (${recall.number})`,
      noticeSource: recall.source,
      whatToDo: recall.whatToDo,
      noticeApplies: noticeApplies(
        language,
        { name: applianceName, serial: row.serial, site: siteText(row) },
        row.doubts,
      ),
    }),
  };
}
