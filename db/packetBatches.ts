/** Queries over packets built in bulk: how far each batch is, what is next, what became of each. */
import type { Database } from 'better-sqlite3';
import { rawStatement } from './rawStatement.ts';

export type PacketBatchRow = {
  readonly batchId: string;
  readonly isDraft: 0 | 1;
  readonly startedByName: string;
  readonly startedAt: string;
  readonly cancelledAt: string | null;
  readonly total: number;
  readonly built: number;
  readonly failed: number;
  readonly waiting: number;
};

export type PacketBatchItemRow = {
  readonly itemId: string;
  readonly position: number;
  readonly runId: string;
  readonly applianceId: string;
  readonly maker: string;
  readonly model: string;
  readonly serial: string;
  readonly customerName: string | null;
  readonly state: 'waiting' | 'built' | 'failed';
  readonly why: string | null;
  readonly gapCount: number | null;
  readonly packetPdfId: string | null;
};

export type BuiltPacketRow = {
  readonly serial: string;
  readonly pdfSha256: string;
  readonly pdfBytes: number;
  readonly zipSha256: string;
  readonly zipBytes: number;
};

export function listPacketBatches(raw: Database, limit: number): readonly PacketBatchRow[] {
  return rawStatement(raw, `${BATCHES} GROUP BY b.id ORDER BY b.started_at DESC, b.id DESC LIMIT ?`).all(
    limit,
  ) as PacketBatchRow[];
}

export function findPacketBatch(raw: Database, batchId: string): PacketBatchRow | undefined {
  return rawStatement(raw, `${BATCHES} WHERE b.id = ? GROUP BY b.id`).get(batchId) as PacketBatchRow | undefined;
}

export function listPacketBatchItems(
  raw: Database,
  page: { readonly batchId: string; readonly state: string | null; readonly after: number; readonly limit: number },
): readonly PacketBatchItemRow[] {
  return rawStatement(
    raw,
    `SELECT i.id AS itemId, i.position, i.run_id AS runId, j.appliance_id AS applianceId, a.maker, a.model, a.serial,
       q.name AS customerName, i.state, i.why, i.gap_count AS gapCount, i.packet_pdf_id AS packetPdfId
     FROM packet_batch_items i
     JOIN runs r ON r.id = i.run_id
     JOIN jobs j ON j.id = r.job_id
     JOIN appliances a ON a.id = j.appliance_id
     LEFT JOIN placements p ON p.appliance_id = a.id AND p.to_on IS NULL
     LEFT JOIN sites s ON s.id = p.site_id
     LEFT JOIN customers c ON c.id = s.customer_id
     LEFT JOIN parties q ON q.id = c.party_id
     WHERE i.batch_id = @batchId AND i.position > @after AND (@state IS NULL OR i.state = @state)
     ORDER BY i.position LIMIT @limit`,
  ).all(page) as PacketBatchItemRow[];
}

export function findNextWaiting(
  raw: Database,
  batchId: string,
): { readonly itemId: string; readonly runId: string } | undefined {
  return rawStatement(
    raw,
    `SELECT id AS itemId, run_id AS runId FROM packet_batch_items WHERE batch_id = ? AND state = 'waiting' ORDER BY position LIMIT 1`,
  ).get(batchId) as { itemId: string; runId: string } | undefined;
}

export function listItemIds(raw: Database, batchId: string, state: string): readonly string[] {
  return rawStatement(raw, 'SELECT id FROM packet_batch_items WHERE batch_id = ? AND state = ? ORDER BY position')
    .pluck()
    .all(batchId, state) as string[];
}

/** In the order they were chosen in. */
export function listBuiltPackets(raw: Database, batchId: string): readonly BuiltPacketRow[] {
  return rawStatement(
    raw,
    `SELECT a.serial, f.sha256 AS pdfSha256, f.byte_length AS pdfBytes, z.sha256 AS zipSha256, z.byte_length AS zipBytes
     FROM packet_batch_items i
     JOIN runs r ON r.id = i.run_id
     JOIN jobs j ON j.id = r.job_id
     JOIN appliances a ON a.id = j.appliance_id
     JOIN attachments f ON f.id = i.packet_pdf_id
     JOIN attachments z ON z.id = i.packet_zip_id
     WHERE i.batch_id = ? AND i.state = 'built' ORDER BY i.position`,
  ).all(batchId) as BuiltPacketRow[];
}

/** Of these, the runs that are not there. */
export function listUnknownRuns(raw: Database, runIds: readonly string[]): readonly string[] {
  return rawStatement(raw, 'SELECT value FROM json_each(?) WHERE value NOT IN (SELECT id FROM runs)')
    .pluck()
    .all(JSON.stringify(runIds)) as string[];
}

const BATCHES = `
  SELECT b.id AS batchId, b.is_draft AS isDraft, f.name AS startedByName, b.started_at AS startedAt,
    b.cancelled_at AS cancelledAt, count(i.id) AS total, coalesce(sum(i.state = 'built'), 0) AS built,
    coalesce(sum(i.state = 'failed'), 0) AS failed, coalesce(sum(i.state = 'waiting'), 0) AS waiting
  FROM packet_batches b JOIN staff f ON f.id = b.started_by_id LEFT JOIN packet_batch_items i ON i.batch_id = b.id`;
