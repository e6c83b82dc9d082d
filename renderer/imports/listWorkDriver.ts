/**
 * Follows a list being taken in or out, on whatever screen one is: the core goes on with it by itself, and a window that was
 * closed meanwhile finds it again.
 */
import type { ListWorkKind } from '../../electron/contract/imports.ts';
import type { ErrorsOf, OutputOf } from '../../electron/contract/index.ts';
import { createSharedValue, useSharedValue } from '../kit/sharedValue.ts';
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
const drive = createSharedValue(RESTING);

/** Does nothing where it is being followed already. */
export async function followList(core: Transport, work: ListWork): Promise<void> {
  const { workId } = work;
  if (drive.get().work?.workId === workId) return;
  drive.set({ ...RESTING, work });
  for (;;) {
    const reply = await core.call('imports.follow', { workId });
    if (drive.get().work?.workId !== workId) return;
    if (!reply.ok) return drive.set({ ...RESTING, failed: { work, error: reply.error as ErrorsOf<'imports.follow'> } });
    if (reply.value.isDone) return drive.set({ ...RESTING, ended: { work, counts: reply.value.counts } });
    drive.set({ ...drive.get(), step: reply.value.step });
  }
}

/** One that was through before the stop came is followed to its end. */
export async function stopList(core: Transport): Promise<void> {
  const { work } = drive.get();
  if (work !== null) await core.call('imports.stop', { workId: work.workId });
}

/** What the last one ended with has been read, or another list is looked at. */
export function forgetEndedList(): void {
  if (drive.get().work === null) drive.set(RESTING);
}

export function useListDrive(): ListDrive {
  return useSharedValue(drive);
}
