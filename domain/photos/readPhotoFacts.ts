/**
 * What a camera wrote into a JPEG beside the picture: when it was taken, and whether anything in it may say where. Of the
 * satellites' notes the time alone is read, never the place.
 *
 * Source  Exif 2.32 (CIPA DC-008): IFD0 tag 0x8769 points to the Exif directory, 0x8825 to the GPS directory; 0x9003
 *         DateTimeOriginal "YYYY:MM:DD HH:MM:SS", 0x9011 OffsetTimeOriginal "+hh:mm"; GPS 0x001D GPSDateStamp
 *         "YYYY:MM:DD" and 0x0007 GPSTimeStamp, three fractions, both UTC; tag numbers from memory
 */
export type PhotoFacts = {
  /** At the camera's own clock, 'YYYY-MM-DDTHH:MM:SS'; null: not written, or no date there ever was. */
  readonly takenLocal: string | null;
  /** Of that clock, '+02:00'; null: not written, as in most older cameras. */
  readonly offset: string | null;
  /** The satellites' own time at the last fix, 'YYYY-MM-DDTHH:MM:SSZ'; null: not written. */
  readonly satelliteUtc: string | null;
  /** GPS data, or a kind of note in which a place may stand. When in doubt, true. */
  readonly mayTellPlace: boolean;
};

const NOTHING: PhotoFacts = { takenLocal: null, offset: null, satelliteUtc: null, mayTellPlace: false };

/** Never throws: a damaged file tells nothing, and may tell a place. */
export function readPhotoFacts(bytes: Uint8Array): PhotoFacts {
  if (bytes[0] === 0x89 && bytes[1] === 0x50) return { ...NOTHING, mayTellPlace: hasPngNotes(bytes) };
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return { ...NOTHING, mayTellPlace: true };
  let facts = NOTHING;
  let at = 2;
  while (bytes[at] === 0xff) {
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    // The picture itself begins: previews behind its end carry notes of their own.
    if (marker === 0xda) return { ...facts, mayTellPlace: facts.mayTellPlace || hasTail(bytes) };
    const length = ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0);
    if (length < 2 || at + 2 + length > bytes.length) return { ...facts, mayTellPlace: true };
    facts = withSegment(facts, marker, bytes.subarray(at + 4, at + 2 + length));
    at += 2 + length;
  }
  return { ...facts, mayTellPlace: true };
}

/** JFIF, colour profile and Adobe's colour note hold no place; comments and everything else may. */
const PLAIN_SEGMENTS = new Set([0xe0, 0xe2, 0xee]);

function withSegment(facts: PhotoFacts, marker: number, body: Uint8Array): PhotoFacts {
  if (marker === 0xe1 && textAt(body, 0, 6) === 'Exif\0\0') return withExif(facts, body.subarray(6));
  const isNote = (marker >= 0xe0 && marker <= 0xef && !PLAIN_SEGMENTS.has(marker)) || marker === 0xfe;
  return isNote ? { ...facts, mayTellPlace: true } : facts;
}

function withExif(facts: PhotoFacts, tiff: Uint8Array): PhotoFacts {
  const view = new DataView(tiff.buffer, tiff.byteOffset, tiff.byteLength);
  if (view.byteLength < 8) return { ...facts, mayTellPlace: true };
  const isLittle = view.getUint16(0) === 0x4949;
  const first = directoryAt(view, view.getUint32(4, isLittle), isLittle);
  if (first === null) return { ...facts, mayTellPlace: true };
  const exif = directoryAt(view, first.get(0x8769)?.value ?? 0, isLittle);
  const takenLocal = dateFrom(asciiOf(tiff, exif?.get(0x9003)));
  const offset = offsetFrom(asciiOf(tiff, exif?.get(0x9011)));
  // A maker's own note (0x927C) is read by nobody but the maker: it may hold anything.
  const mayTellPlace = facts.mayTellPlace || first.has(0x8825) || exif?.has(0x927c) === true;
  const satelliteUtc = satelliteTime(view, directoryAt(view, first.get(0x8825)?.value ?? 0, isLittle), isLittle);
  return {
    takenLocal: takenLocal ?? facts.takenLocal,
    offset: offset ?? facts.offset,
    satelliteUtc: satelliteUtc ?? facts.satelliteUtc,
    mayTellPlace,
  };
}

function satelliteTime(view: DataView, gps: ReadonlyMap<number, Entry> | null, isLittle: boolean): string | null {
  const bytes = new Uint8Array(view.buffer, view.byteOffset, view.byteLength);
  const day = asciiOf(bytes, gps?.get(0x001d));
  const time = gps?.get(0x0007);
  if (time === undefined || time.count !== 3 || time.value + 24 > view.byteLength) return null;
  const [hour, minute, second] = [0, 8, 16].map((offset) => {
    const parts = view.getUint32(time.value + offset + 4, isLittle);
    return parts === 0
      ? ''
      : String(Math.floor(view.getUint32(time.value + offset, isLittle) / parts)).padStart(2, '0');
  });
  const moment = dateFrom(`${day} ${hour}:${minute}:${second}`);
  return moment === null ? null : `${moment}Z`;
}

type Entry = {
  readonly count: number;
  /** Where a text of that many bytes stands. */
  readonly at: number;
  /** A number, or where what is longer than four bytes stands. */
  readonly value: number;
};

/** null: it does not lie within the block. */
function directoryAt(view: DataView, start: number, isLittle: boolean): ReadonlyMap<number, Entry> | null {
  if (start < 8 || start + 2 > view.byteLength) return null;
  const count = view.getUint16(start, isLittle);
  if (start + 2 + count * 12 > view.byteLength) return null;
  return new Map(
    Array.from({ length: count }, (_, index) => {
      const at = start + 2 + index * 12;
      const length = view.getUint32(at + 4, isLittle);
      const value = view.getUint32(at + 8, isLittle);
      return [view.getUint16(at, isLittle), { count: length, at: length <= 4 ? at + 8 : value, value }] as const;
    }),
  );
}

/** Only used of texts: their count is their length in bytes. */
function asciiOf(tiff: Uint8Array, entry: Entry | undefined): string {
  return entry === undefined || entry.count > 64 ? '' : textAt(tiff, entry.at, entry.count).replaceAll('\0', '').trim();
}

function textAt(bytes: Uint8Array, from: number, length: number): string {
  return String.fromCharCode(...bytes.subarray(from, from + length));
}

function dateFrom(text: string): string | null {
  const match = /^(\d{4}):(\d{2}):(\d{2}) (\d{2}):(\d{2}):(\d{2})$/.exec(text);
  if (match === null) return null;
  const [, year, month, day, hour, minute, second] = match;
  const iso = `${year}-${month}-${day}T${hour}:${minute}:${second}`;
  // Cameras that were never set write zeros; JavaScript's own dates roll over instead of refusing.
  const instant = new Date(`${iso}Z`);
  return Number.isNaN(instant.getTime()) || instant.toISOString().slice(0, 19) !== iso ? null : iso;
}

function offsetFrom(text: string): string | null {
  return /^[+-](0\d|1[0-4]):[0-5]\d$/.test(text) ? text : null;
}

/** Nothing but padding may follow the end of the picture. */
function hasTail(bytes: Uint8Array): boolean {
  for (let at = bytes.length - 2; at >= 0; at -= 1) {
    if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return bytes.subarray(at + 2).some((byte) => byte !== 0);
  }
  return true;
}

const PNG_NOTES = new Set(['eXIf', 'tEXt', 'zTXt', 'iTXt']);

function hasPngNotes(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 8; at + 12 <= bytes.length; ) {
    const type = textAt(bytes, at + 4, 4);
    if (PNG_NOTES.has(type)) return true;
    at += 12 + view.getUint32(at);
    if (type === 'IEND') return at !== bytes.length;
  }
  return true;
}
