/** The three files of a packet: the pages, the record's canonical bytes, and a ZIP with all of it and the photos as taken, without where. */
import { type Zippable, zipSync } from 'fflate';
import { readPhotoFacts } from '../../../domain/photos/readPhotoFacts.ts';
import { canonicalJson, sha256Hex } from '../../sealing/canonicalJson.ts';
import { disclosuresJson } from './disclosuresJson.ts';
import type { PacketInput, PacketPhoto } from './packetInput.ts';
import { packetPdf } from './packetPdf.ts';
import { type PacketView, packetView } from './packetView.ts';
import { readingsCsv } from './readingsCsv.ts';

export type PacketFiles = {
  readonly packetPdf: Uint8Array;
  readonly recordJson: Uint8Array;
  readonly packetZip: Uint8Array;
  /** The record's fingerprint. */
  readonly sha256: string;
};

export async function packetFiles(input: PacketInput): Promise<PacketFiles> {
  const view = packetView(input);
  const pdf = await packetPdf(input);
  const recordJson = utf8(canonicalJson(input.record));
  const files = new Map<string, Uint8Array>([
    ['packet.pdf', pdf],
    ['record.json', recordJson],
    ['disclosures.json', utf8(disclosuresJson(view.sha256, input.disclosures))],
    ['readings.csv', utf8(readingsCsv(view))],
    ...photoFiles(view, input.photos),
  ]);
  return { packetPdf: pdf, recordJson, packetZip: zipOf(files), sha256: view.sha256 };
}

/** In the form that `sha256sum -c` reads. */
export function checksumsText(files: ReadonlyMap<string, Uint8Array>): string {
  return [...files]
    .map(([name, bytes]) => `${sha256Hex(bytes)}  ${name}\n`)
    .toSorted()
    .join('');
}

function zipOf(files: ReadonlyMap<string, Uint8Array>): Uint8Array {
  const zippable: Zippable = {};
  const all = [...files, ['checksums.txt', utf8(checksumsText(files))] as const];
  for (const [name, bytes] of all.toSorted(([a], [b]) => (a < b ? -1 : 1))) {
    // Photos and the PDF are packed already. The time is the earliest a ZIP can hold, in whatever zone: bytes must not vary.
    zippable[name] = [bytes, { level: /\.(json|csv|txt)$/u.test(name) ? 6 : 0, mtime: new Date(1980, 0, 1) }];
  }
  return zipSync(zippable);
}

function photoFiles(view: PacketView, photos: readonly PacketPhoto[]): readonly (readonly [string, Uint8Array])[] {
  const bySha = new Map(photos.map((photo) => [photo.sha256, photo]));
  const seen = new Set<string>();
  return view.record.run.photos.flatMap((recorded, index): readonly (readonly [string, Uint8Array])[] => {
    const photo = bySha.get(recorded.sha256);
    if (!photo || photo.bytes.length === 0 || seen.has(recorded.sha256)) return [];
    const bytes = bytesToHandOut(photo);
    if (bytes === null) return [];
    seen.add(recorded.sha256);
    const number = String(index + 1).padStart(2, '0');
    const what = recorded.itemKey.replace(/[^a-z0-9-]/gu, '').slice(0, 60);
    return [[`photos/${number}-${what}-${recorded.sha256.slice(0, 8)}.${extension(bytes)}`, bytes]];
  });
}

/** null: it may say where it was taken, and there is no copy that does not. */
function bytesToHandOut({ bytes, copyBytes }: PacketPhoto): Uint8Array | null {
  return copyBytes ?? (readPhotoFacts(bytes).mayTellPlace ? null : bytes);
}

/** By content: what a file is called says nothing. */
function extension(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return 'jpg';
  return bytes[0] === 0x89 && bytes[1] === 0x50 ? 'png' : 'bin';
}

function utf8(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}
