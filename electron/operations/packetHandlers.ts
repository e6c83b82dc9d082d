/** The registration packet: what it lacks, and its documents. */
import { buildPacket } from './buildPacket.ts';
import type { Handlers } from './handler.ts';
import { listPacketGaps } from './packetInput.ts';
import { loadRun } from './runState.ts';

export const packetHandlers: Handlers<'packets.check' | 'packets.build'> = {
  'packets.check': (input, context) => ({
    isSealed: loadRun(context.db, input.runId).run.sealedAt !== null,
    gaps: [...listPacketGaps(context.db, input.runId, context.now)],
  }),

  'packets.build': async (input, context) => {
    const built = await buildPacket(context, input);
    context.services.changed(['registrations']);
    return built;
  },
};
