/**
 * What a power cut leaves of a folder: the bytes that were synced, and of what was written since any mixture of sectors, so
 * that pages come torn in the middle. Names that were never synced are gone.
 */
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const SECTOR_BYTES = 512;

/** Makes `live` what it would be after the cut; `kept` holds the synced bytes. */
export function cutPower(live: string, kept: string, random: () => number): void {
  const left = filesIn(kept).map((name) => ({
    name,
    bytes: torn(join(live, name), readFileSync(join(kept, name)), random),
  }));
  rmSync(live, { recursive: true, force: true });
  for (const { name, bytes } of left) {
    mkdirSync(dirname(join(live, name)), { recursive: true });
    writeFileSync(join(live, name), bytes);
  }
  mkdirSync(live, { recursive: true });
}

/** All that lies there has reached the disk: what was done to the folder in between was no part of a cut. */
export function settleDisk(live: string, kept: string): void {
  rmSync(kept, { recursive: true, force: true });
  cpSync(live, kept, { recursive: true });
}

/** The files of the folder, without half-kept copies and the shared memory that no power cut leaves. */
export function filesIn(folder: string): readonly string[] {
  if (!existsSync(folder)) return [];
  return (
    readdirSync(folder, { recursive: true, withFileTypes: true }) as {
      name: string;
      parentPath: string;
      isFile(): boolean;
    }[]
  )
    .filter((entry) => entry.isFile() && !entry.name.endsWith('.half') && !entry.name.endsWith('-shm'))
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1));
}

function torn(livePath: string, synced: Buffer, random: () => number): Buffer {
  // Deleted since: whether that has reached the disk is chance too; the old bytes are the harder case.
  if (!existsSync(livePath)) return synced;
  const written = readFileSync(livePath);
  const sectors = Math.ceil(Math.max(written.length, synced.length) / SECTOR_BYTES);
  let length = synced.length;
  const result = Buffer.alloc(sectors * SECTOR_BYTES);
  synced.copy(result);
  for (let sector = 0; sector < sectors; sector += 1) {
    const start = sector * SECTOR_BYTES;
    const end = Math.min(start + SECTOR_BYTES, written.length);
    if (start >= end || written.subarray(start, end).equals(synced.subarray(start, end)) || random() < 0.5) continue;
    written.copy(result, start, start, end);
    length = Math.max(length, end);
  }
  return result.subarray(0, length);
}
