/**
 * Going back to a copy. The copy is made ready beside the store under a name that says nothing yet; once it carries the name
 * `.restoring` the restore is decided, and whoever opens the store next carries it through. So a cut at any moment leaves the
 * store as it was or the copy in its place, never neither.
 */
import { existsSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { syncFile, syncFolder } from './attachmentFiles.ts';
import { newId } from './newId.ts';

/** How many replaced stores stay; each is as large as the store. */
const KEEP_REPLACED = 2;

/**
 * Makes the copy ready, with a new incarnation, so that no other machine mistakes the store for the one it was. Nothing of the
 * store in use is touched.
 */
export function stageRestore(copyPath: string, storeFile: string, now: string): void {
  const staged = stagedPath(storeFile);
  removeStaged(staged);
  try {
    const copy = new Database(copyPath, { readonly: true });
    try {
      copy.prepare('VACUUM INTO ?').run(staged);
    } finally {
      copy.close();
    }
    const raw = new Database(staged);
    try {
      raw.pragma('journal_mode = DELETE');
      raw.prepare('UPDATE device SET incarnation = ?').run(newId(Date.parse(now)));
    } finally {
      raw.close();
    }
    syncFile(staged);
  } catch (error) {
    removeStaged(staged);
    throw error;
  }
}

/** Decides the restore that was made ready, and carries it through. The store must be closed. Answers the replaced store's name. */
export function restoreStaged(storeFile: string): string | null {
  renameSync(stagedPath(storeFile), decidedPath(storeFile));
  syncFolder(dirname(storeFile));
  return finishRestore(storeFile);
}

/** Carries a decided restore through; without one it does nothing. The replaced store goes with what its log still held. */
export function finishRestore(storeFile: string): string | null {
  if (!existsSync(decidedPath(storeFile))) return null;
  // Named by when it was decided: a start that goes on after a cut names what is left the same.
  const decidedAt = statSync(decidedPath(storeFile)).mtime.toISOString();
  const keptAs = `${storeFile}.replaced-${decidedAt.replaceAll(/[-:]|\.\d+/g, '')}`;
  const wasThere = existsSync(storeFile);
  // The log first: a store in place beside the log of another one would be read as one with it.
  for (const suffix of ['-wal', '-journal'])
    if (existsSync(`${storeFile}${suffix}`)) renameSync(`${storeFile}${suffix}`, `${keptAs}${suffix}`);
  rmSync(`${storeFile}-shm`, { force: true });
  if (wasThere) renameSync(storeFile, keptAs);
  syncFolder(dirname(storeFile));
  renameSync(decidedPath(storeFile), storeFile);
  syncFolder(dirname(storeFile));
  pruneReplaced(storeFile);
  return wasThere ? basename(keptAs) : null;
}

/** The names of the stores that were replaced, newest first. */
export function replacedStores(storeFile: string): readonly string[] {
  const start = `${basename(storeFile)}.replaced-`;
  return namesBeside(storeFile)
    .filter((name) => name.startsWith(start) && !/-(wal|journal|shm)$/.test(name))
    .sort()
    .reverse();
}

function pruneReplaced(storeFile: string): void {
  for (const old of replacedStores(storeFile).slice(KEEP_REPLACED))
    for (const suffix of ['', '-wal', '-journal']) rmSync(join(dirname(storeFile), `${old}${suffix}`), { force: true });
}

function namesBeside(storeFile: string): readonly string[] {
  return existsSync(dirname(storeFile)) ? readdirSync(dirname(storeFile)) : [];
}

function removeStaged(staged: string): void {
  for (const suffix of ['', '-journal', '-wal', '-shm']) rmSync(`${staged}${suffix}`, { force: true });
}

function stagedPath(storeFile: string): string {
  return `${storeFile}.restoring.part`;
}

function decidedPath(storeFile: string): string {
  return `${storeFile}.restoring`;
}
