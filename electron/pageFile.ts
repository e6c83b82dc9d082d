/**
 * Reads one of the window's own files. The path is judged after decoding and piece by piece against what the build
 * writes, so that no spelling of "one folder up" reaches outside.
 */
import { readFile, realpath } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';

export type PageFile = { readonly bytes: Uint8Array<ArrayBuffer>; readonly mediaType: string };

const mediaTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.ico': 'image/x-icon',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
};

/** `rawPath` as it came, before any decoding, without the query. */
export async function readPageFile(folder: string, rawPath: string): Promise<PageFile | null> {
  const pieces = parsePagePath(rawPath);
  if (pieces === null) return null;
  const mediaType = mediaTypes[extname(pieces.at(-1) ?? '')];
  if (mediaType === undefined) return null;
  try {
    const root = await realpath(folder);
    const path = await realpath(join(root, ...pieces));
    if (!path.startsWith(root + sep)) return null;
    return { bytes: new Uint8Array(await readFile(path)), mediaType };
  } catch {
    return null;
  }
}

/** The decoded pieces of a path that could name a page file, or null. `/` is the page itself. */
export function parsePagePath(rawPath: string): readonly string[] | null {
  const decoded = decodeOnce(rawPath);
  if (decoded === null || !decoded.startsWith('/')) return null;
  if (decoded === '/') return ['index.html'];
  const pieces = decoded.slice(1).split('/');
  return pieces.every((piece) => /^[A-Za-z0-9_-][A-Za-z0-9._-]*$/.test(piece) && !isDeviceName(piece)) ? pieces : null;
}

function decodeOnce(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
}

/** Names that Windows opens as a device, whatever folder they stand in. */
function isDeviceName(piece: string): boolean {
  return /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i.test(piece) || piece.endsWith('.');
}
