/**
 * Keeps a batch of packets going while its person does something else: asked again and again until nothing waits, on
 * whatever screen one is. Closing the window ends it; the batch itself remembers how far it was.
 */
import { useSyncExternalStore } from 'react';
import type { ErrorsOf } from '../../electron/contract/index.ts';
import type { PacketBatch } from '../../electron/contract/packetBatches.ts';
import { createSharedValue } from '../kit/sharedValue.ts';
import type { Transport } from '../transport/Transport.ts';

type DriveError = ErrorsOf<'packetBatches.goOn'>;
export type Drive = {
  readonly isGoing: boolean;
  readonly batch: PacketBatch | null;
  /** Why it ended before its end; a stop is no error. */
  readonly error: DriveError | null;
};

const drives = createSharedValue<ReadonlyMap<string, Drive>>(new Map());

/** A batch that is going already is left alone. */
export async function driveBatch(core: Transport, batchId: string): Promise<void> {
  if (drives.get().get(batchId)?.isGoing === true) return;
  set(batchId, { isGoing: true, batch: null, error: null });
  for (;;) {
    const reply = await core.call('packetBatches.goOn', { batchId });
    const isOver = !reply.ok || reply.value.waiting === 0;
    const batch = reply.ok ? reply.value : (drives.get().get(batchId)?.batch ?? null);
    set(batchId, {
      isGoing: !isOver,
      batch: isOver ? null : batch,
      error: reply.ok || reply.error.code === 'batch-stopped' ? null : reply.error,
    });
    if (isOver) return;
  }
}

/** null: this window has not worked on it. */
export function useDrive(batchId: string): Drive | null {
  return useSyncExternalStore(drives.subscribe, () => drives.get().get(batchId) ?? null);
}

function set(batchId: string, drive: Drive): void {
  drives.set(new Map(drives.get()).set(batchId, drive));
}
