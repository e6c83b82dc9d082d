/** Makes the documents of one packet and issues them, in one transaction with whatever else belongs to it. */
import { attachments, issuedDocuments } from '../../db/schema/index.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { packetFiles } from '../documents/packet/packetFiles.ts';
import { actorOf, fail, type HandlerContext } from './handler.ts';
import { readPacketState } from './packetInput.ts';

export type PacketIds = { readonly packetPdfId: string; readonly recordJsonId: string; readonly packetZipId: string };

export async function buildPacket(
  context: HandlerContext,
  asked: { readonly runId: string; readonly isDraft: boolean; readonly gapReason: string | null },
  onIssued: (writer: StoreWriter, ids: PacketIds) => void = () => {},
): Promise<PacketIds & { readonly sha256: string }> {
  const { attachments: kept } = context.services;
  const { state, facts, gaps } = readPacketState(context.db, asked.runId, context.now, kept.get);
  if (!asked.isDraft) {
    if (state.run.sealedAt === null) return fail('not-sealed', {});
    const mayIssueWithGaps =
      actorOf(context).roles.includes('owner') && asked.gapReason !== null && asked.gapReason !== '';
    if (gaps.length > 0 && !mayIssueWithGaps) return fail('gaps-open', { gaps: [...gaps] });
  }
  const files = await packetFiles({
    ...facts,
    gaps,
    isDraft: asked.isDraft,
    gapReason: asked.gapReason,
    madeAt: context.now,
    showsBothUnits: true,
  });
  // Files first, rows after: a row never points to bytes that are not there.
  const bytes: Readonly<Record<DocumentKind, Kept>> = {
    'packet-pdf': keepBytes(context, files.packetPdf),
    'record-json': keepBytes(context, files.recordJson),
    'packet-zip': keepBytes(context, files.packetZip),
  };
  const name = `${state.record.appliance.serial.replaceAll(/[^A-Za-z0-9-]/g, '')}${asked.isDraft ? '-draft' : ''}`;
  const ids = context.write((writer) => {
    const issued = {
      packetPdfId: issue(writer, asked, 'packet-pdf', 'application/pdf', `packet-${name}.pdf`, bytes),
      recordJsonId: issue(writer, asked, 'record-json', 'application/json', `record-${name}.json`, bytes),
      packetZipId: issue(writer, asked, 'packet-zip', 'application/zip', `packet-${name}.zip`, bytes),
    };
    onIssued(writer, issued);
    return issued;
  });
  return { ...ids, sha256: files.sha256 };
}

type DocumentKind = 'packet-pdf' | 'record-json' | 'packet-zip';
type Kept = { readonly sha256: string; readonly byteLength: number };

function keepBytes(context: HandlerContext, bytes: Uint8Array): Kept {
  return { sha256: context.services.attachments.put(bytes).sha256, byteLength: bytes.length };
}

function issue(
  writer: StoreWriter,
  asked: { readonly runId: string; readonly isDraft: boolean; readonly gapReason: string | null },
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
  writer.insert(issuedDocuments, {
    kind,
    runId: asked.runId,
    isDraft: asked.isDraft,
    gapReason: asked.gapReason,
    attachmentId,
    issuedById,
    issuedAt: writer.now,
  });
  return attachmentId;
}
