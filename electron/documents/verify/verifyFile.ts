/**
 * Checks a packet, a record or a ZIP from the file alone: is it what it says, does it fit together, and what is the
 * fingerprint. Whether that fingerprint is the one that was printed at the time, only the paper can tell.
 */
import { canonicalJson, sha256Hex } from '../../sealing/canonicalJson.ts';
import { disclosureProblems } from '../../sealing/chainProblems.ts';
import { parseJsonStrictly } from '../../sealing/parseJsonStrictly.ts';
import { DRAFT_SCHEMA, draftRecord, RECORD_SCHEMA, sealedRecord } from '../../sealing/sealedRecord.ts';
import { disclosuresFile } from '../packet/disclosuresJson.ts';
import { checkFileDigest } from '../packet/fileDigest.ts';
import { type PdfContents, readPdfContents } from './pdfAttachments.ts';
import { readZip } from './readZip.ts';

export type FileProblemCode =
  | 'not-recognised'
  | 'no-record-inside'
  | 'not-a-record'
  | 'not-canonical'
  /** The pages may say something else than the record inside. */
  | 'pdf-changed'
  | 'no-disclosures-inside'
  | 'disclosures-unreadable'
  | 'disclosures-of-another-record'
  | 'disclosure-differs'
  | 'zip-unreadable'
  | 'file-missing'
  | 'file-not-listed'
  | 'checksum-differs'
  | 'checksums-unreadable'
  | 'pdf-holds-another-record'
  | 'photo-not-in-record';
export type FileProblem = { readonly code: FileProblemCode; readonly detail: string | null };

export type VerifiedFile = {
  readonly kind: 'packet-pdf' | 'record-json' | 'packet-zip' | 'unknown';
  /** The record's fingerprint; null when no record could be read. */
  readonly sha256: string | null;
  readonly isSealed: boolean;
  readonly sealedAt: string | null;
  /** Nothing in the file contradicts anything else in it. */
  readonly isIntact: boolean;
  readonly problems: readonly FileProblem[];
  /** What inside the file the record was held against. Empty: only the printed fingerprint can tell. */
  readonly heldAgainst: readonly ('file-digest' | 'disclosures' | 'checksums')[];
};

type Findings = Pick<VerifiedFile, 'kind' | 'heldAgainst' | 'problems'> & { readonly record: ReadRecord | null };

export function verifyFile(bytes: Uint8Array): VerifiedFile {
  const { kind, record, problems, heldAgainst } = findingsOf(bytes);
  return {
    kind,
    sha256: record?.sha256 ?? null,
    isSealed: record?.sealedAt !== undefined && record.sealedAt !== null,
    sealedAt: record?.sealedAt ?? null,
    isIntact: problems.length === 0,
    problems,
    heldAgainst,
  };
}

function findingsOf(bytes: Uint8Array): Findings {
  const start = Buffer.from(bytes.subarray(0, 5)).toString('latin1');
  if (start === '%PDF-') return checkPdf(bytes);
  if (start.startsWith('PK\u0003\u0004')) return checkZip(bytes);
  if (start.startsWith('{')) {
    const { record, problems } = readRecord(bytes);
    return { kind: 'record-json', record, problems, heldAgainst: [] };
  }
  return { kind: 'unknown', record: null, problems: [problem('not-recognised')], heldAgainst: [] };
}

type ReadRecord = {
  readonly value: unknown;
  readonly bytes: Uint8Array;
  readonly sha256: string;
  /** null: a draft. */
  readonly sealedAt: string | null;
  readonly photoHashes: ReadonlySet<string>;
};

function readRecord(bytes: Uint8Array): {
  readonly record: ReadRecord | null;
  readonly problems: readonly FileProblem[];
} {
  const text = decode(bytes);
  const json = text === null ? null : parseJsonStrictly(text);
  if (text === null || !json?.ok) {
    const detail = json && !json.ok ? json.error.code : 'not UTF-8';
    return { record: null, problems: [problem('not-a-record', detail)] };
  }
  const schema = (json.value as { readonly schema?: unknown } | null)?.schema;
  const parsed = schema === DRAFT_SCHEMA ? draftRecord.safeParse(json.value) : sealedRecord.safeParse(json.value);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    const detail = `/${issue?.path.join('/') ?? ''}: ${issue?.message ?? ''}`;
    return { record: null, problems: [problem('not-a-record', detail)] };
  }
  const record = {
    value: json.value,
    bytes,
    sha256: sha256Hex(bytes),
    sealedAt: parsed.data.schema === RECORD_SCHEMA ? parsed.data.seal.sealedAt : null,
    photoHashes: new Set(parsed.data.run.photos.flatMap((photo) => [photo.sha256, photo.copySha256 ?? photo.sha256])),
  };
  return { record, problems: canonicalJson(json.value) === text ? [] : [problem('not-canonical')] };
}

function checkPdf(bytes: Uint8Array): Findings {
  const contents = readPdfContents(bytes);
  const { record, problems } = recordIn(contents);
  const disclosures = record ? checkDisclosures(record, contents.attachments.get('disclosures.json') ?? null) : [];
  return {
    kind: 'packet-pdf',
    record,
    problems: [...problems, ...pdfProblems(bytes, contents), ...disclosures],
    heldAgainst: ['file-digest', 'disclosures'],
  };
}

function recordIn(contents: PdfContents): ReturnType<typeof readRecord> {
  const attached = contents.attachments.get('record.json');
  return attached ? readRecord(attached) : { record: null, problems: [problem('no-record-inside')] };
}

function pdfProblems(bytes: Uint8Array, contents: PdfContents): readonly FileProblem[] {
  const digest = checkFileDigest(bytes, contents.digest);
  if (digest === 'same') return [];
  const detail =
    digest === 'absent'
      ? 'the file was written anew by another program, or is not one of ours'
      : 'the file’s bytes are not the ones it was made with';
  return [problem('pdf-changed', detail)];
}

function checkDisclosures(record: ReadRecord, bytes: Uint8Array | null): readonly FileProblem[] {
  if (!bytes) return [problem('no-disclosures-inside')];
  const text = decode(bytes);
  const json = text === null ? null : parseJsonStrictly(text);
  const parsed = json?.ok ? disclosuresFile.safeParse(json.value) : null;
  if (!parsed?.success) return [problem('disclosures-unreadable')];
  if (parsed.data.recordSha256 !== record.sha256)
    return [problem('disclosures-of-another-record', parsed.data.recordSha256)];
  return disclosureProblems(record.value, parsed.data.disclosures).map((one) =>
    problem('disclosure-differs', 'path' in one ? one.path : null),
  );
}

function checkZip(bytes: Uint8Array): Findings {
  const zip = readZip(bytes);
  if (!zip.ok) {
    const detail = zip.error.code === 'zip-name-refused' ? `${zip.error.code}: ${zip.error.name}` : zip.error.code;
    return { kind: 'packet-zip', record: null, problems: [problem('zip-unreadable', detail)], heldAgainst: [] };
  }
  const files = zip.value;
  const recordBytes = files.get('record.json');
  const read = recordBytes ? readRecord(recordBytes) : { record: null, problems: [problem('no-record-inside')] };
  const { record } = read;
  return {
    kind: 'packet-zip',
    record,
    problems: [
      ...read.problems,
      ...checksumProblems(files),
      ...(record ? checkDisclosures(record, files.get('disclosures.json') ?? null) : []),
      ...(record ? packetProblems(record, files.get('packet.pdf')) : []),
      ...(record ? photoProblems(record, files) : []),
    ],
    heldAgainst: ['checksums', 'disclosures', 'file-digest'],
  };
}

function checksumProblems(files: ReadonlyMap<string, Uint8Array>): readonly FileProblem[] {
  const list = files.get('checksums.txt');
  const text = list ? decode(list) : null;
  if (text === null) return [problem('file-missing', 'checksums.txt')];
  const problems: FileProblem[] = [];
  const listed = new Set<string>(['checksums.txt']);
  for (const line of text.split('\n').filter((one) => one !== '')) {
    const [, sha256, name] = /^([0-9a-f]{64}) {2}(\S+)$/.exec(line) ?? [];
    if (sha256 === undefined || name === undefined) {
      problems.push(problem('checksums-unreadable', line.slice(0, 120)));
      continue;
    }
    listed.add(name);
    const content = files.get(name);
    if (!content) problems.push(problem('file-missing', name));
    else if (sha256Hex(content) !== sha256) problems.push(problem('checksum-differs', name));
  }
  for (const name of files.keys()) if (!listed.has(name)) problems.push(problem('file-not-listed', name));
  return problems;
}

function packetProblems(record: ReadRecord, pdf: Uint8Array | undefined): readonly FileProblem[] {
  if (!pdf) return [problem('file-missing', 'packet.pdf')];
  const contents = readPdfContents(pdf);
  const inside = contents.attachments.get('record.json');
  const isSame = inside !== undefined && inside !== null && sha256Hex(inside) === record.sha256;
  return [...(isSame ? [] : [problem('pdf-holds-another-record')]), ...pdfProblems(pdf, contents)];
}

function photoProblems(record: ReadRecord, files: ReadonlyMap<string, Uint8Array>): readonly FileProblem[] {
  return [...files]
    .filter(([name, bytes]) => name.startsWith('photos/') && !record.photoHashes.has(sha256Hex(bytes)))
    .map(([name]) => problem('photo-not-in-record', name));
}

function problem(code: FileProblemCode, detail: string | null = null): FileProblem {
  return { code, detail };
}

/** A byte order mark is kept: the canonical text has none. */
function decode(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
}
