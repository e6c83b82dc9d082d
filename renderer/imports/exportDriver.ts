/**
 * Keeps an export going while its person does something else: asked again and again until the file is made, on whatever
 * screen one is. Closing the window ends it, and nothing of it stays.
 */
import type { ErrorsOf, OutputOf } from '../../electron/contract/index.ts';
import { createSharedValue, useSharedValue } from '../kit/sharedValue.ts';
import type { Transport } from '../transport/Transport.ts';

type Progress = OutputOf<'exports.goOn'>;
export type ExportDrive = {
  /** null: it is over, or none was begun. */
  readonly exportId: string | null;
  readonly step: Extract<Progress, { isDone: false }> | null;
  readonly made: Extract<Progress, { isDone: true }> | null;
  readonly error: ErrorsOf<'exports.goOn'> | null;
};

const RESTING: ExportDrive = { exportId: null, step: null, made: null, error: null };
const drive = createSharedValue(RESTING);

export async function driveExport(core: Transport, exportId: string): Promise<void> {
  drive.set({ ...RESTING, exportId });
  for (;;) {
    const reply = await core.call('exports.goOn', { exportId });
    if (drive.get().exportId !== exportId) return;
    if (reply.ok && !reply.value.isDone) drive.set({ ...drive.get(), step: reply.value });
    else {
      drive.set(
        reply.ok && reply.value.isDone ? { ...RESTING, made: reply.value } : { ...RESTING, error: errorOf(reply) },
      );
      return;
    }
  }
}

export async function stopExport(core: Transport): Promise<void> {
  const { exportId } = drive.get();
  if (exportId === null) return;
  drive.set(RESTING);
  await core.call('exports.stop', { exportId });
}

export function useExportDrive(): ExportDrive {
  return useSharedValue(drive);
}

function errorOf(reply: Awaited<ReturnType<Transport['call']>>): ExportDrive['error'] {
  return reply.ok ? null : (reply.error as ExportDrive['error']);
}
