/** What a check of a file found, in words for the person who asked. */
import type { FileProblem, FileProblemCode, VerifiedFile } from './verifyFile.ts';

const KINDS: Readonly<Record<VerifiedFile['kind'], string>> = {
  'packet-pdf': 'a packet, PDF',
  'record-json': 'a record, JSON',
  'packet-zip': 'a packet, ZIP',
  unknown: 'no packet, record or ZIP of Lightoff',
};

const PROBLEMS: Readonly<Record<FileProblemCode, string>> = {
  'not-recognised': 'It is neither PDF, JSON nor ZIP',
  'no-record-inside': 'There is no record inside',
  'not-a-record': 'The record cannot be read as one',
  'not-canonical': 'The record was written anew: its text is not the one that was sealed',
  'pdf-changed': 'The pages may say something else than the record inside',
  'no-disclosures-inside': 'The particulars kept beside the record are missing',
  'disclosures-unreadable': 'The particulars kept beside the record cannot be read',
  'disclosures-of-another-record': 'The particulars beside the record belong to another one',
  'disclosure-differs': 'A particular beside the record is not the one that was sealed',
  'zip-unreadable': 'The ZIP cannot be read',
  'file-missing': 'A file is missing',
  'file-not-listed': 'A file was added that the checksums do not list',
  'checksum-differs': 'A file was changed: its checksum differs',
  'checksums-unreadable': 'A line of the checksums cannot be read',
  'pdf-holds-another-record': 'The PDF holds another record than the ZIP',
  'photo-not-in-record': 'A photo is not among those of the record',
};

/** One line each, the verdict last. */
export function fileWords(fileName: string, found: VerifiedFile): readonly string[] {
  return [
    `${fileName}: ${KINDS[found.kind]}`,
    ...(found.sha256 === null ? [] : [`fingerprint ${found.sha256}`]),
    ...(found.sha256 !== null && !found.isSealed ? ['A draft: this record was never sealed.'] : []),
    ...found.problems.map(problemWords),
    found.isIntact
      ? 'Nothing in the file contradicts anything else in it. Compare the fingerprint with the printed one.'
      : 'NOT intact: do not rely on it.',
  ];
}

function problemWords({ code, detail }: FileProblem): string {
  return `Problem: ${PROBLEMS[code]}${detail === null ? '' : ` (${detail})`}.`;
}
