/** What was written to people: composed from what stood on that day, as the office would have, with what came of it. */
import type { Store } from '../../db/openStore.ts';
import { attachments, messageEvents } from '../../db/schema/index.ts';
import { mailMergeCsv } from '../documents/messages/mailMergeCsv.ts';
import type { ReadContext } from '../operations/handler.ts';
import { composeMessages } from '../operations/messages/composeMessages.ts';
import { keepMessages } from '../operations/messages/keepMessages.ts';
import { standingNotices } from '../operations/messages/recallSubjects.ts';
import { standingReminders } from '../operations/messages/reminderSubjects.ts';
import { toMergeRow } from '../operations/messages/toMergeRow.ts';
import { type Ids, idOf } from './ids.ts';
import type { LoadOptions } from './loadScenario.ts';
import type { Scenario } from './scenario.ts';

export function addMailings(store: Store, data: Scenario, ids: Ids, { putFile }: Pick<LoadOptions, 'putFile'>): void {
  const preparedById = idOf(ids, 'dispatcher');
  for (const mailing of data.mailings) {
    const { channel, preparedAt } = mailing;
    const context: ReadContext = { store, db: store.db, now: preparedAt };
    const standing =
      mailing.recallKey === null
        ? standingReminders(context, channel)
        : standingNotices(context, idOf(ids, mailing.recallKey));
    const keys = standing.map(({ key }) => key);
    const going = composeMessages(context, { keys, channel, language: null })
      .filter(({ leftOutBecause }) => leftOutBecause === null)
      .slice(0, mailing.atMost);
    const bytes = new TextEncoder().encode(mailMergeCsv(going.map(toMergeRow)));
    // Written as of that day: the newest stands first in the log, which goes by when a message was made.
    store.write({ actorId: preparedById, now: preparedAt }, (writer) => {
      const attachmentId = writer.insert(attachments, {
        sha256: putFile(bytes).sha256,
        mediaType: 'text/csv',
        byteLength: bytes.length,
        fileName: `${mailing.recallKey === null ? 'reminders' : 'notice'}-${preparedAt.slice(0, 10)}.csv`,
        origin: 'derived',
        subject: 'messages',
        addedById: preparedById,
        addedAt: preparedAt,
      });
      const messageIds = keepMessages(writer, going, { channel, attachmentId, preparedById, preparedAt });
      const note = (messageId: string, event: { kind: string; on: string; note: string | null }): void =>
        void writer.insert(messageEvents, { messageId, ...event, byId: preparedById, at: `${event.on}T16:00:00.000Z` });
      for (const [index, messageId] of messageIds.entries()) {
        if (mailing.sentOn !== null) note(messageId, { kind: 'sent', on: mailing.sentOn, note: null });
        for (const { nth, ...event } of mailing.events) if (nth === index) note(messageId, event);
      }
    });
  }
}
