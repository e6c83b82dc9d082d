/** Files beside the database, named by the SHA-256 of their bytes: an original can never be altered without showing. */
import { createHash } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  writeSync,
} from 'node:fs';
import { dirname, join } from 'node:path';

export type AttachmentFiles = {
  /** Durable before it returns; the same bytes twice are one file. */
  readonly put: (bytes: Uint8Array) => { readonly sha256: string };
  /** null: the file is missing or its bytes no longer match their name. */
  readonly get: (sha256: string) => Uint8Array | null;
  /** Only when nothing on file needs it. */
  readonly remove: (sha256: string) => void;
};

export function openAttachmentFiles(folder: string): AttachmentFiles {
  const pathOf = (sha256: string): string => join(folder, sha256.slice(0, 2), sha256);
  return {
    put(bytes) {
      const sha256 = createHash('sha256').update(bytes).digest('hex');
      const path = pathOf(sha256);
      if (!existsSync(path)) writeDurably(path, bytes);
      return { sha256 };
    },
    get(sha256) {
      const path = pathOf(sha256);
      if (!/^[0-9a-f]{64}$/.test(sha256) || !existsSync(path)) return null;
      const bytes = readFileSync(path);
      return createHash('sha256').update(bytes).digest('hex') === sha256 ? bytes : null;
    },
    remove(sha256) {
      if (/^[0-9a-f]{64}$/.test(sha256)) rmSync(pathOf(sha256), { force: true });
    },
  };
}

/** Written aside, synced, then renamed into place: a cut in the middle leaves no half file under the final name. */
export function writeDurably(path: string, bytes: Uint8Array): void {
  mkdirSync(dirname(path), { recursive: true });
  const aside = `${path}.part`;
  const file = openSync(aside, 'w');
  try {
    let written = 0;
    while (written < bytes.length) written += writeSync(file, bytes, written);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  renameSync(aside, path);
  syncFolder(dirname(path));
}

export function syncFile(path: string): void {
  // Windows syncs only what is open for writing.
  const handle = openSync(path, 'r+');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

export function syncFolder(folder: string): void {
  // Windows cannot open a folder for syncing; there the rename itself is journaled.
  if (process.platform === 'win32') return;
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
