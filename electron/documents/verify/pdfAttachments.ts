/** The files inside a PDF by name, and the one text of its document information that is ours. */
import { DIGEST_KEY } from '../packet/fileDigest.ts';
import {
  isDict,
  isName,
  isRef,
  type PdfDict,
  type PdfObject,
  type PdfValue,
  readPdfObjects,
  resolve,
  unpack,
} from './pdfObjects.ts';

export type PdfContents = {
  /** null: it is there, but packed in a way that can't be read. */
  readonly attachments: ReadonlyMap<string, Uint8Array | null>;
  readonly digest: string | null;
};

export function readPdfContents(file: Uint8Array): PdfContents {
  const objects = readPdfObjects(file);
  const attachments = new Map<string, Uint8Array | null>();
  let digest: string | null = null;
  for (const { value } of objects.values()) {
    if (!isDict(value)) continue;
    const stated = resolve(objects, value.get(DIGEST_KEY));
    if (typeof stated === 'string') digest = stated;
    const specification = fileSpecification(value, objects);
    if (specification) attachments.set(specification.name, specification.bytes);
  }
  return { attachments, digest };
}

function fileSpecification(
  dict: PdfDict,
  objects: ReadonlyMap<number, PdfObject>,
): { readonly name: string; readonly bytes: Uint8Array | null } | null {
  const type = dict.get('Type');
  const files = resolve(objects, dict.get('EF'));
  if (!isName(type) || type.name !== 'Filespec' || !isDict(files)) return null;
  const name = textString(resolve(objects, dict.get('UF') ?? dict.get('F')));
  const stream = files.get('F') ?? files.get('UF');
  const object = isRef(stream) ? objects.get(stream.ref) : undefined;
  if (name === null) return null;
  return { name, bytes: object ? unpack(objects, object) : null };
}

/** Text strings are UTF-16 after a byte order mark, else one byte a letter (ISO 32000-1, 7.9.2.2). */
function textString(value: PdfValue): string | null {
  if (typeof value !== 'string') return null;
  if (!value.startsWith('\u00fe\u00ff')) return value;
  return Buffer.from(value.slice(2), 'latin1').swap16().toString('utf16le');
}
