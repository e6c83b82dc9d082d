/**
 * Draws the packets that a new demo asks for in one go. Drawing takes its time, making the demo must not: it happens while
 * its first user is still signing in. Left half-way, the batch waits to be gone on with like any other.
 */
import { listPacketBatches } from '../../db/packetBatches.ts';
import { onceFree } from '../../db/storeTaken.ts';
import type { HandlerContext } from '../operations/handler.ts';
import { packetBatchHandlers } from '../operations/packetBatchHandlers.ts';

/** `contextAt` acts in the name of the owner, who asked for them, on the day they were asked for. */
export async function drawPackets(contextAt: (now: string) => HandlerContext): Promise<void> {
  const { store } = contextAt('');
  for (const { batchId, startedAt } of listPacketBatches(store.raw, 10)) {
    let waiting = 1;
    while (waiting > 0 && store.raw.open) {
      ({ waiting } = await onceFree(() =>
        packetBatchHandlers['packetBatches.goOn']({ batchId }, contextAt(startedAt)),
      ));
    }
  }
}
