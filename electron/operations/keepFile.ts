/**
 * Puts a file beside the store as it is. Of a photo it reads when the camera says it was taken; where something in it may say
 * where, a copy without any of that is kept too, and only the copy is ever handed out in a packet.
 */
import type { AttachmentFiles } from '../../db/attachmentFiles.ts';
import { findCompany } from '../../db/people.ts';
import { attachmentLinks, attachments } from '../../db/schema/index.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { readPhotoFacts } from '../../domain/photos/readPhotoFacts.ts';
import { takenInstant } from '../../domain/photos/takenInstant.ts';
import type { FileToPut } from '../contract/wire.ts';
import { photoForPdf } from '../documents/packet/photoForPdf.ts';
import type { TakenMediaType } from './sniffMediaType.ts';

/** The files are there before the rows: a row never points to bytes that are not. */
export function keepFile(
  file: FileToPut,
  mediaType: TakenMediaType,
  files: AttachmentFiles,
  write: <T>(action: (writer: StoreWriter) => T) => T,
  addedById: string,
): { readonly attachmentId: string; readonly sha256: string } {
  const { sha256 } = files.put(file.bytes);
  const isPhoto = mediaType === 'image/jpeg' || mediaType === 'image/png';
  const facts = isPhoto ? readPhotoFacts(file.bytes) : null;
  const plain = facts?.mayTellPlace === true ? photoForPdf(file.bytes) : null;
  const copy = plain?.kind === 'drawable' ? { bytes: plain.bytes, ...files.put(plain.bytes) } : null;
  const attachmentId = write((writer) => {
    const exifAt = facts === null ? null : (takenInstant(facts, findCompany(writer.db)?.timeZone ?? 'UTC')?.at ?? null);
    const row = {
      mediaType,
      fileName: file.fileName.slice(0, 300),
      subject: /csv|sheet/u.test(mediaType) ? 'table' : 'photo',
      takenAt: exifAt ?? file.takenAt,
      addedById,
      addedAt: writer.now,
    };
    const original = { ...row, sha256, byteLength: file.bytes.length, origin: 'original', exifAt };
    const id = writer.insert(attachments, original);
    if (copy !== null) {
      const copyId = writer.insert(attachments, {
        ...row,
        sha256: copy.sha256,
        byteLength: copy.bytes.length,
        origin: 'derived',
        derivedFromId: id,
      });
      writer.insert(attachmentLinks, { attachmentId: copyId, entity: 'attachments', entityId: id });
    }
    return id;
  });
  return { attachmentId, sha256 };
}
