/**
 * Follows a list being taken in or out, on whatever screen one is: the core goes on with it by itself, and a window that was
 * closed meanwhile finds it again.
 */
import { useSyncExternalStore } from 'react';
import type { ListWorkKind } from '../../electron/contract/imports.ts';
import type { ErrorsOf, OutputOf } from '../../electron/contract/index.ts';
import type { Transport } from '../transport/Transport.ts';

type Progress = OutputOf<'imports.follow'>;
export type ListWork = { readonly workId: string; readonly kind: ListWorkKind; readonly fileName: string };
export type ListDrive = {
  /** null: it is over, or none was begun. */
  readonly work: ListWork | null;
  readonly step: Extract<Progress, { isDone: false }>['step'];
  /** How the last one ended. */
  readonly ended: { readonly work: ListWork; readonly counts: Extract<Progress, { isDone: true }>['counts'] } | null;
  /** Or why it did not end. */
  readonly failed: { readonly work: ListWork; readonly error: ErrorsOf<'imports.follow'> } | null;
};

const RESTING: ListDrive = { work: null, step: null, ended: null, failed: null };
let drive = RESTING;
const listeners = new Set<() => void>();

/** Does nothing where it is being followed already. */
export async function followList(core: Transport, work: ListWork): Promise<void> {
  const { workId } = work;
  if (drive.work?.workId === workId) return;
  set({ ...RESTING, work });
  for (;;) {
    const reply = await core.call('imports.follow', { workId });
    if (drive.work?.workId !== workId) return;
    if (!reply.ok) return set({ ...RESTING, failed: { work, error: reply.error as ErrorsOf<'imports.follow'> } });
    if (reply.value.isDone) return set({ ...RESTING, ended: { work, counts: reply.value.counts } });
    set({ ...drive, step: reply.value.step });
  }
}

/** One that was through before the stop came is followed to its end. */
export async function stopList(core: Transport): Promise<void> {
  const { work } = drive;
  if (work !== null) await core.call('imports.stop', { workId: work.workId });
}

/** What the last one ended with has been read, or another list is looked at. */
export function forgetEndedList(): void {
  if (drive.work === null) set(RESTING);
}

export function useListDrive(): ListDrive {
  return useSyncExternalStore(listen, () => drive);
}

function set(next: ListDrive): void {
  drive = next;
  for (const listener of listeners) listener();
}

function listen(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
