/**
 * Reads the objects of a PDF without trusting its cross-reference table: one pass over the file, objects inside object
 * streams included, later ones replacing earlier ones as readers do. Enough to get at attachments and document information.
 *
 * Source   ISO 32000-1, 7.3 (objects), 7.5.7 (object streams)
 */
import { inflateSync } from 'node:zlib';

export type PdfRef = { readonly ref: number };
export type PdfName = { readonly name: string };
export type PdfDict = ReadonlyMap<string, PdfValue>;
/** Strings are given as their bytes, one character each. */
export type PdfValue = null | boolean | number | string | PdfRef | PdfName | readonly PdfValue[] | PdfDict;
export type PdfObject = { readonly value: PdfValue; readonly stream: Uint8Array | null };

const MOST_OBJECTS = 200_000;
const LARGEST_STREAM = 64 * 1024 * 1024;
const DEEPEST = 64;

export function readPdfObjects(file: Uint8Array): ReadonlyMap<number, PdfObject> {
  // One character per byte: positions in the text are positions in the file.
  const text = Buffer.from(file.buffer, file.byteOffset, file.byteLength).toString('latin1');
  const objects = new Map<number, PdfObject>();
  const start = /(\d{1,9})\s+\d{1,5}\s+obj\b/g;
  for (let found = start.exec(text); found; found = start.exec(text)) {
    if (objects.size >= MOST_OBJECTS) break;
    const reader = makeReader(text, start.lastIndex);
    const value = reader.value(0);
    if (value === undefined) continue;
    const stream = streamAfter(text, file, reader.position(), value);
    if (stream) start.lastIndex = stream.end;
    objects.set(Number(found[1]), { value, stream: stream?.bytes ?? null });
  }
  for (const object of [...objects.values()]) addFromObjectStream(object, objects);
  return objects;
}

export function resolve(objects: ReadonlyMap<number, PdfObject>, value: PdfValue | undefined): PdfValue {
  let current = value ?? null;
  for (let step = 0; step < DEEPEST && isRef(current); step += 1) current = objects.get(current.ref)?.value ?? null;
  return isRef(current) ? null : current;
}

/** The unpacked content of a stream; null when it is packed in a way this does not read, or damaged. */
export function unpack(objects: ReadonlyMap<number, PdfObject>, object: PdfObject): Uint8Array | null {
  if (!object.stream || !isDict(object.value)) return null;
  const filter = resolve(objects, object.value.get('Filter'));
  const names = filter === null ? [] : Array.isArray(filter) ? filter.map((one) => resolve(objects, one)) : [filter];
  if (names.length === 0) return object.stream;
  const [only] = names;
  if (names.length > 1 || !isName(only) || only.name !== 'FlateDecode') return null;
  try {
    return inflateSync(object.stream, { maxOutputLength: LARGEST_STREAM });
  } catch {
    return null;
  }
}

export function isDict(value: PdfValue | undefined): value is PdfDict {
  return value instanceof Map;
}
export function isName(value: PdfValue | undefined): value is PdfName {
  return typeof value === 'object' && value !== null && 'name' in value;
}
export function isRef(value: PdfValue | undefined): value is PdfRef {
  return typeof value === 'object' && value !== null && 'ref' in value;
}

function streamAfter(
  text: string,
  file: Uint8Array,
  position: number,
  value: PdfValue,
): { readonly bytes: Uint8Array; readonly end: number } | null {
  if (!isDict(value)) return null;
  const opening = /\s*stream(\r\n|\n|\r)/y;
  opening.lastIndex = position;
  if (!opening.test(text)) return null;
  const from = opening.lastIndex;
  const length = value.get('Length');
  const stated = typeof length === 'number' && length >= 0 ? from + length : null;
  if (stated !== null && /^\s{0,2}endstream/.test(text.slice(stated, stated + 12))) {
    return { bytes: file.subarray(from, stated), end: stated };
  }
  // The length stands elsewhere, or is wrong: the keyword ends it, less the line end before it.
  const keyword = text.indexOf('endstream', from);
  if (keyword < 0) return null;
  let end = keyword;
  if (text[end - 1] === '\n') end -= 1;
  if (text[end - 1] === '\r') end -= 1;
  return { bytes: file.subarray(from, end), end: keyword };
}

function addFromObjectStream(object: PdfObject, objects: Map<number, PdfObject>): void {
  if (!isDict(object.value)) return;
  const type = object.value.get('Type');
  const count = object.value.get('N');
  const first = object.value.get('First');
  if (!isName(type) || type.name !== 'ObjStm' || typeof count !== 'number' || typeof first !== 'number') return;
  const content = unpack(objects, object);
  if (!content) return;
  const text = Buffer.from(content).toString('latin1');
  const numbers = text.slice(0, first).match(/\d+/g) ?? [];
  for (let index = 0; index < Math.min(count, MOST_OBJECTS); index += 1) {
    const number = Number(numbers[index * 2]);
    const offset = Number(numbers[index * 2 + 1]);
    if (!Number.isInteger(number) || !Number.isInteger(offset)) return;
    const value = makeReader(text, first + offset).value(0);
    if (value !== undefined) objects.set(number, { value, stream: null });
  }
}

type Reader = { readonly value: (depth: number) => PdfValue | undefined; readonly position: () => number };

function makeReader(text: string, from: number): Reader {
  let at = from;

  const skipBlanks = (): void => {
    const blanks = /(?:[\0\t\n\f\r ]|%[^\r\n]*)*/y;
    blanks.lastIndex = at;
    blanks.test(text);
    at = blanks.lastIndex;
  };
  const take = (sticky: RegExp): string | null => {
    sticky.lastIndex = at;
    const found = sticky.exec(text);
    if (!found) return null;
    at = sticky.lastIndex;
    return found[0];
  };

  const value = (depth: number): PdfValue | undefined => {
    if (depth > DEEPEST) return undefined;
    skipBlanks();
    if (text.startsWith('<<', at)) return dict(depth);
    const letter = text[at];
    if (letter === '[') return list(depth);
    if (letter === '(') return literal();
    if (letter === '<') return hexadecimal();
    if (letter === '/') {
      at += 1;
      return {
        name: (take(/[^\0\t\n\f\r ()<>[\]{}/%]*/y) ?? '').replace(/#([0-9a-fA-F]{2})/g, (_, hex: string) => byte(hex)),
      };
    }
    const reference = take(/\d{1,9}[\0\t\n\f\r ]+\d{1,5}[\0\t\n\f\r ]+R(?![a-zA-Z0-9])/y);
    if (reference !== null) return { ref: Number.parseInt(reference, 10) };
    const number = take(/[+-]?(?:\d+\.?\d*|\.\d+)/y);
    if (number !== null) return Number(number);
    const word = take(/[a-z]+/y);
    if (word === 'true' || word === 'false') return word === 'true';
    return word === 'null' ? null : undefined;
  };

  const dict = (depth: number): PdfDict | undefined => {
    at += 2;
    const entries = new Map<string, PdfValue>();
    for (;;) {
      skipBlanks();
      if (text.startsWith('>>', at)) {
        at += 2;
        return entries;
      }
      const key = value(depth + 1);
      const item = isName(key) ? value(depth + 1) : undefined;
      if (!isName(key) || item === undefined) return undefined;
      entries.set(key.name, item);
    }
  };

  const list = (depth: number): readonly PdfValue[] | undefined => {
    at += 1;
    const items: PdfValue[] = [];
    for (;;) {
      skipBlanks();
      if (text[at] === ']') {
        at += 1;
        return items;
      }
      const item = value(depth + 1);
      if (item === undefined) return undefined;
      items.push(item);
    }
  };

  const literal = (): string | undefined => {
    at += 1;
    let open = 1;
    let result = '';
    while (at < text.length) {
      const letter = text[at] ?? '';
      at += 1;
      if (letter === '\\') result += escaped();
      else {
        if (letter === '(') open += 1;
        if (letter === ')') open -= 1;
        if (open === 0) return result;
        result += letter;
      }
    }
    return undefined;
  };

  const escaped = (): string => {
    const octal = take(/[0-7]{1,3}/y);
    if (octal !== null) return String.fromCharCode(Number.parseInt(octal, 8) & 255);
    if (take(/\r\n|\r|\n/y) !== null) return '';
    const letter = text[at] ?? '';
    at += 1;
    return { n: '\n', r: '\r', t: '\t', b: '\b', f: '\f' }[letter] ?? letter;
  };

  const hexadecimal = (): string | undefined => {
    const found = take(/<[0-9a-fA-F\0\t\n\f\r ]*>/y);
    if (found === null) return undefined;
    const digits = found.replace(/[^0-9a-fA-F]/g, '');
    return (digits.length % 2 === 0 ? digits : `${digits}0`).replace(/../g, byte);
  };

  return { value, position: () => at };
}

function byte(hex: string): string {
  return String.fromCharCode(Number.parseInt(hex, 16));
}
