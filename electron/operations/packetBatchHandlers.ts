/**
 * Packets in bulk. The rows alone say how far a batch is: a stop, a kill or a full disk leaves what is built, and going on
 * begins with the first that waits.
 */
import { setTimeout } from 'node:timers/promises';
import {
  findNextWaiting,
  findPacketBatch,
  listItemIds,
  listPacketBatches,
  listPacketBatchItems,
  listUnknownRuns,
  type PacketBatchRow,
} from '../../db/packetBatches.ts';
import { packetBatches, packetBatchItems } from '../../db/schema/index.ts';
import { StoreTaken } from '../../db/storeTaken.ts';
import { PACKET_FAILURES, type PacketBatch } from '../contract/packetBatches.ts';
import { buildPacket } from './buildPacket.ts';
import { actorOf, fail, type HandlerContext, type Handlers, notFound, OperationFailure } from './handler.ts';
import { divideBuilt, saveBuilt } from './savePacketBatch.ts';
import { storageFailureOf } from './storageFailure.ts';

const SHOWN_BATCHES = 20;
const PAGE = 100;
/** The bar moves at least this often, and a stop takes effect as soon. */
const TURN_MS = 400;

/** Batches being worked on at this moment: a second window looking on builds nothing twice. */
const inWork = new Set<string>();

export const packetBatchHandlers: Handlers<
  | 'packetBatches.start'
  | 'packetBatches.goOn'
  | 'packetBatches.stop'
  | 'packetBatches.resume'
  | 'packetBatches.list'
  | 'packetBatches.get'
  | 'packetBatches.save'
> = {
  'packetBatches.start': (input, context) => {
    const runIds = [...new Set(input.runIds)];
    const [unknown] = listUnknownRuns(context.store.raw, runIds);
    if (unknown !== undefined) return notFound('runs', unknown);
    const startedById = actorOf(context).staffId;
    const batchId = context.write((writer) => {
      const made = writer.insert(packetBatches, { isDraft: input.isDraft, startedById, startedAt: context.now });
      for (const [position, runId] of runIds.entries()) {
        writer.insert(packetBatchItems, { batchId: made, position, runId, state: 'waiting' });
      }
      return made;
    });
    context.services.changed(['packets']);
    return { batchId };
  },

  'packetBatches.goOn': async (input, context) => {
    const { cancelledAt, isDraft } = requireBatch(context, input.batchId);
    if (cancelledAt !== null) return fail('batch-stopped', {});
    if (inWork.has(input.batchId)) {
      await setTimeout(TURN_MS);
    } else {
      inWork.add(input.batchId);
      try {
        await buildForAMoment(context, input.batchId, isDraft === 1);
      } finally {
        inWork.delete(input.batchId);
      }
    }
    const after = requireBatch(context, input.batchId);
    if (after.waiting === 0) context.services.changed(['registrations', 'packets']);
    return toBatch(after);
  },

  'packetBatches.stop': (input, context) => {
    const { waiting } = requireBatch(context, input.batchId);
    if (waiting > 0) {
      context.write((writer) => writer.update(packetBatches, input.batchId, { cancelledAt: context.now }));
    }
    context.services.changed(['registrations', 'packets']);
    return {};
  },

  'packetBatches.resume': (input, context) => {
    requireBatch(context, input.batchId);
    context.write((writer) => {
      writer.update(packetBatches, input.batchId, { cancelledAt: null });
      if (!input.withFailed) return;
      for (const itemId of listItemIds(context.store.raw, input.batchId, 'failed')) {
        writer.update(packetBatchItems, itemId, { state: 'waiting', why: null, gapCount: null, doneAt: null });
      }
    });
    context.services.changed(['packets']);
    return {};
  },

  'packetBatches.list': (_input, context) => listPacketBatches(context.store.raw, SHOWN_BATCHES).map(toBatch),

  'packetBatches.get': (input, context) => {
    const { raw } = context.store;
    const batch = requireBatch(context, input.batchId);
    const state = input.show === 'all' ? null : input.show;
    const found = listPacketBatchItems(raw, { batchId: input.batchId, state, after: input.after, limit: PAGE + 1 });
    const shown = found.slice(0, PAGE);
    return {
      batch: toBatch(batch),
      items: shown.map(({ itemId: _itemId, position: _position, why, ...row }) => ({ ...row, why: failureOf(why) })),
      next: found.length > PAGE ? (shown.at(-1)?.position ?? null) : null,
      fileCounts: {
        pages: divideBuilt(raw, input.batchId, 'pages').length,
        whole: divideBuilt(raw, input.batchId, 'whole').length,
      },
    };
  },

  'packetBatches.save': (input, context) =>
    saveBuilt(context, { ...input, startedAt: requireBatch(context, input.batchId).startedAt }),
};

async function buildForAMoment(context: HandlerContext, batchId: string, isDraft: boolean): Promise<void> {
  const startMs = performance.now();
  do {
    const item = findNextWaiting(context.store.raw, batchId);
    if (item === undefined) return;
    await buildItem(context, item, isDraft);
  } while (performance.now() - startMs < TURN_MS);
}

async function buildItem(
  context: HandlerContext,
  item: { readonly itemId: string; readonly runId: string },
  isDraft: boolean,
): Promise<void> {
  try {
    await buildPacket(context, { runId: item.runId, isDraft, gapReason: null }, (writer, ids) =>
      writer.update(packetBatchItems, item.itemId, {
        state: 'built',
        packetPdfId: ids.packetPdfId,
        packetZipId: ids.packetZipId,
        doneAt: context.now,
      }),
    );
  } catch (error) {
    // A store that takes nothing more stops the batch, with everything still waiting.
    if (error instanceof StoreTaken || storageFailureOf(error) !== null) throw error;
    const { why, gapCount } = failureFrom(context, error);
    context.write((writer) =>
      writer.update(packetBatchItems, item.itemId, { state: 'failed', why, gapCount, doneAt: context.now }),
    );
  }
}

function failureFrom(
  context: HandlerContext,
  error: unknown,
): { readonly why: (typeof PACKET_FAILURES)[number]; readonly gapCount: number | null } {
  const code = error instanceof OperationFailure ? failureOf(error.code) : null;
  if (code === null) {
    // One that cannot be drawn must not keep the others waiting.
    context.services.logFault(error);
    return { why: 'internal', gapCount: null };
  }
  const { data } = error as OperationFailure;
  return { why: code, gapCount: code === 'gaps-open' ? (data as { gaps: readonly unknown[] }).gaps.length : null };
}

function failureOf(code: string | null): (typeof PACKET_FAILURES)[number] | null {
  return PACKET_FAILURES.find((one) => one === code) ?? null;
}

function requireBatch(context: HandlerContext, batchId: string): PacketBatchRow {
  return findPacketBatch(context.store.raw, batchId) ?? notFound('packet-batches', batchId);
}

function toBatch({ isDraft, ...row }: PacketBatchRow): PacketBatch {
  return { ...row, isDraft: isDraft === 1 };
}
