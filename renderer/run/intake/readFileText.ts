/** The text of a file in whatever letters it was written, or a sentence why there is none. */
import { err, ok, type Result } from '../../../domain/result.ts';

/** A log of a whole day of one-second rows is well below it. */
const MOST_BYTES = 2_000_000;

export async function readFileText(file: Blob): Promise<Result<string, string>> {
  if (file.size > MOST_BYTES) return err('This file is larger than 2 MB: export less of it from the instrument.');
  return decodeText(new Uint8Array(await file.arrayBuffer()));
}

export function decodeText(bytes: Uint8Array): Result<string, string> {
  const text = decode(bytes);
  if (text.trim() === '') return err('There is nothing in this file.');
  if (/(?![\t\r\n\f\v])\p{Cc}|\ufffd/u.test(text)) {
    return err('This is no text file. Export from the instrument as CSV or TXT, or copy the lines and paste them.');
  }
  return ok(text);
}

function decode(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    // Older instruments write degree signs and micro signs in one byte.
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
