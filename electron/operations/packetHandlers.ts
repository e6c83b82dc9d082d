/** The registration packet: what it lacks, and its documents. */
import { attachments, issuedDocuments } from '../../db/schema/index.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { packetFiles } from '../documents/packet/packetFiles.ts';
import type { PacketInput } from '../documents/packet/packetInput.ts';
import { actorOf, fail, type HandlerContext, type Handlers } from './handler.ts';
import { listPacketGaps, readPacketState } from './packetInput.ts';
import { loadRun } from './runState.ts';

export const packetHandlers: Handlers<'packets.check' | 'packets.build'> = {
  'packets.check': (input, context) => ({
    isSealed: loadRun(context.db, input.runId).run.sealedAt !== null,
    gaps: [...listPacketGaps(context.db, input.runId, context.now)],
  }),

  'packets.build': async (input, context) => {
    const { services } = context;
    const { state, facts, gaps } = readPacketState(context.db, input.runId, context.now, services.attachments.get);
    if (!input.isDraft) {
      if (state.run.sealedAt === null) return fail('not-sealed', {});
      const mayIssueWithGaps =
        actorOf(context).roles.includes('owner') && input.gapReason !== null && input.gapReason !== '';
      if (gaps.length > 0 && !mayIssueWithGaps) return fail('gaps-open', { gaps: [...gaps] });
    }
    const packet: PacketInput = {
      ...facts,
      gaps,
      isDraft: input.isDraft,
      gapReason: input.gapReason,
      madeAt: context.now,
      showsBothUnits: true,
    };
    const files = await packetFiles(packet);
    // Files first, rows after: a row never points to bytes that are not there.
    const kept = {
      'packet-pdf': keepBytes(context, files.packetPdf),
      'record-json': keepBytes(context, files.recordJson),
      'packet-zip': keepBytes(context, files.packetZip),
    };
    const name = `${state.record.appliance.serial.replaceAll(/[^A-Za-z0-9-]/g, '')}${input.isDraft ? '-draft' : ''}`;
    const ids = context.write((writer) => ({
      packetPdfId: issue(writer, input, 'packet-pdf', 'application/pdf', `packet-${name}.pdf`, kept),
      recordJsonId: issue(writer, input, 'record-json', 'application/json', `record-${name}.json`, kept),
      packetZipId: issue(writer, input, 'packet-zip', 'application/zip', `packet-${name}.zip`, kept),
    }));
    services.changed(['registrations']);
    return { ...ids, sha256: files.sha256 };
  },
};

type DocumentKind = 'packet-pdf' | 'record-json' | 'packet-zip';
type Kept = { readonly sha256: string; readonly byteLength: number };

function keepBytes(context: HandlerContext, bytes: Uint8Array): Kept {
  return { sha256: context.services.attachments.put(bytes).sha256, byteLength: bytes.length };
}

function issue(
  writer: StoreWriter,
  input: { readonly runId: string; readonly isDraft: boolean; readonly gapReason: string | null },
  kind: DocumentKind,
  mediaType: string,
  fileName: string,
  kept: Readonly<Record<DocumentKind, Kept>>,
): string {
  const issuedById = writer.actorId ?? fail('not-signed-in', {});
  const attachmentId = writer.insert(attachments, {
    ...kept[kind],
    mediaType,
    fileName,
    origin: 'derived',
    subject: kind,
    addedById: issuedById,
    addedAt: writer.now,
  });
  writer.insert(issuedDocuments, { kind, ...input, attachmentId, issuedById, issuedAt: writer.now });
  return attachmentId;
}
