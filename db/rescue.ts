/** What a store that cannot be opened may be replaced by, and the replacing; no store is needed for it. */
import { statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { BackupCopy, BackupFolder, CopyKind, CopyProblem } from './backups.ts';
import { replacedStores, restoreStaged, stageRestore } from './restore.ts';

export type RescueCopy = Omit<BackupCopy, 'kept'> & {
  /** `replaced`: the store that an earlier return put aside. */
  readonly kept: CopyKind | 'replaced';
  /** Opening each takes long: from the newest on they are opened until one is whole. */
  readonly found: 'whole' | CopyProblem | 'not-checked';
};

export type Rescue = {
  readonly folder: string;
  /** Newest first. */
  readonly list: () => readonly RescueCopy[];
  /** Checks the copy and puts it in the store's place; the damaged store is kept beside it. */
  readonly restore: (
    name: string,
    now: string,
  ) =>
    | { readonly ok: true; readonly replacedKeptAs: string | null }
    | { readonly ok: false; readonly why: CopyProblem | 'not-found' };
};

/** `there`: the copies at the second place; one that is here too is taken from here. */
export function openRescue(storeFile: string, backups: BackupFolder, there: BackupFolder | null): Rescue {
  const candidates = (): readonly (Omit<RescueCopy, 'found'> & { readonly path: string })[] =>
    [
      ...backups.list().map((copy) => ({ ...copy, path: backups.pathOf(copy.name) })),
      ...(there?.list() ?? [])
        .filter(({ name }) => !backups.list().some((here) => here.name === name))
        .map((copy) => ({ ...copy, path: there?.pathOf(copy.name) ?? '' })),
      ...replacedStores(storeFile).map((name) => toCandidate(join(dirname(storeFile), name), name)),
    ].sort((a, b) => b.madeAt.localeCompare(a.madeAt));
  return {
    folder: backups.folder,
    list() {
      let isOneWhole = false;
      return candidates().map(({ path, ...copy }) => {
        if (isOneWhole) return { ...copy, found: 'not-checked' };
        const found = backups.problemAt(path) ?? 'whole';
        isOneWhole = found === 'whole';
        return { ...copy, found };
      });
    },
    restore(name, now) {
      const copy = candidates().find((one) => one.name === name);
      if (copy === undefined) return { ok: false, why: 'not-found' };
      const why = backups.problemAt(copy.path);
      if (why !== null) return { ok: false, why };
      stageRestore(copy.path, storeFile, now);
      return { ok: true, replacedKeptAs: restoreStaged(storeFile) };
    },
  };
}

/** Its last change is the moment it stands for. */
function toCandidate(path: string, name: string) {
  const { size, mtime } = statSync(path);
  return { name, path, madeAt: mtime.toISOString(), byteLength: size, kept: 'replaced' as const };
}
