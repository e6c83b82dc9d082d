/** What a batch built as ZIP files of a size that can be mailed and unpacked, each with the table of what is not in them and why. */
import type { Database } from 'better-sqlite3';
import { strToU8, zipSync } from 'fflate';
import { type BuiltPacketRow, listBuiltPackets, listPacketBatchItems } from '../../db/packetBatches.ts';
import type { PACKET_BATCH_PARTS } from '../contract/packetBatches.ts';
import { csvFile, csvText } from '../documents/csvCell.ts';
import { fail, type HandlerContext } from './handler.ts';
import { keepMade } from './keepMade.ts';

type What = (typeof PACKET_BATCH_PARTS)[number];
type Saved = { readonly attachmentId: string; readonly fileName: string; readonly packetCount: number };

/** Held in memory while it is made, and what a browser fetches in one piece. */
const FILE_MAX_BYTES = 48 * 1024 * 1024;

/** Which packets go into which file, in order; a single one that is larger still has a file of its own. */
export function divideBuilt(raw: Database, batchId: string, what: What): readonly (readonly BuiltPacketRow[])[] {
  const files: BuiltPacketRow[][] = [];
  let filledBytes = 0;
  for (const packet of listBuiltPackets(raw, batchId)) {
    const bytes = what === 'pages' ? packet.pdfBytes : packet.zipBytes;
    const last = files.at(-1);
    if (last === undefined || filledBytes + bytes > FILE_MAX_BYTES) {
      files.push([packet]);
      filledBytes = bytes;
    } else {
      last.push(packet);
      filledBytes += bytes;
    }
  }
  return files;
}

export function saveBuilt(
  context: HandlerContext,
  asked: { readonly batchId: string; readonly what: What; readonly file: number; readonly startedAt: string },
): Saved {
  const files = divideBuilt(context.store.raw, asked.batchId, asked.what);
  const packets = files[asked.file - 1];
  if (packets === undefined) return fail('nothing-built', {});
  const entries: Record<string, Uint8Array> = { 'what-became-of-each.csv': strToU8(reportCsv(context, asked.batchId)) };
  for (const packet of packets) {
    const [sha256, ending] = asked.what === 'pages' ? [packet.pdfSha256, 'pdf'] : [packet.zipSha256, 'zip'];
    const bytes = context.services.attachments.get(sha256);
    if (bytes === null) throw new Error(`the packet of ${packet.serial} is not in the store any more`);
    entries[freeName(entries, `packet-${packet.serial.replaceAll(/[^A-Za-z0-9-]/g, '')}`, ending)] = bytes;
  }
  // The same batch saved twice gives the same bytes, kept once.
  const bytes = zipSync(entries, { level: 0, mtime: new Date(asked.startedAt) });
  const number = files.length === 1 ? '' : `-${asked.file}-of-${files.length}`;
  const fileName = `packets-${asked.startedAt.slice(0, 10)}${asked.what === 'whole' ? '-with-records' : ''}${number}.zip`;
  const attachmentId = keepMade(context, { bytes, mediaType: 'application/zip', fileName, subject: 'packet-batch' });
  return { attachmentId, fileName, packetCount: packets.length };
}

/** Serials that differ only in signs a file name cannot hold get a number. */
function freeName(taken: Readonly<Record<string, unknown>>, name: string, ending: string): string {
  for (let count = 1; ; count += 1) {
    const candidate = `${name}${count === 1 ? '' : `-${count}`}.${ending}`;
    if (!(candidate in taken)) return candidate;
  }
}

function reportCsv(context: HandlerContext, batchId: string): string {
  const items = listPacketBatchItems(context.store.raw, { batchId, state: null, after: -1, limit: -1 });
  return csvFile([
    ['maker', 'model', 'serial', 'customer', 'state', 'why', 'missing'],
    ...items.map(({ maker, model, serial, customerName, state, why, gapCount }) => [
      csvText(maker),
      csvText(model),
      csvText(serial),
      csvText(customerName ?? ''),
      state,
      why ?? '',
      gapCount === null ? '' : String(gapCount),
    ]),
  ]);
}
