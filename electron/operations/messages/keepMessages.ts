/** Writes down what was prepared for whom, word for word. */
import { messages } from '../../../db/schema/index.ts';
import type { StoreWriter } from '../../../db/storeWriter.ts';
import type { WrittenChannel } from '../../../domain/messages/messageKinds.ts';
import type { Composed } from './composeMessages.ts';

/** The ids, in the order of what was composed. */
export function keepMessages(
  writer: StoreWriter,
  composed: readonly Composed[],
  prepared: {
    readonly channel: WrittenChannel;
    readonly attachmentId: string;
    readonly preparedById: string;
    readonly preparedAt: string;
  },
): readonly string[] {
  return composed.map(({ subject, language, filled }) =>
    writer.insert(messages, {
      kind: subject.kind,
      language,
      partyId: subject.partyId,
      applianceId: subject.applianceId,
      visitId: subject.visitId,
      recallId: subject.recallId,
      aboutOn: subject.aboutOn,
      subject: filled.subject,
      body: filled.body,
      ...prepared,
    }),
  );
}
