/** Registrations as lists show them: the deadline and the state are derived each time. */
import { readDueFacts } from '../../db/dues/readDueFacts.ts';
import { findGapCount } from '../../db/dues/registrationGaps.ts';
import {
  findLastVisitOfJob,
  findRegistration,
  listRegistrationPage,
  listRegistrations,
} from '../../db/registrations.ts';
import { registrations } from '../../db/schema/index.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { dayAt } from '../../domain/coverage/dayAt.ts';
import { registrationDeadline } from '../../domain/coverage/registrationDeadline.ts';
import type { OutputOf, ParsedInputOf } from '../contract/index.ts';
import type { PacketGap, RegistrationRow } from '../contract/registrations.ts';
import { countGapsOf, PAGE_BUDGET_MS } from './countGaps.ts';
import type { HandlerContext } from './handler.ts';
import { listPacketGaps } from './packetInput.ts';

/** The office registers unless somebody decides otherwise. */
export function ensureRegistration(writer: StoreWriter, applianceId: string, jobId: string): void {
  if (findRegistration(writer.db, applianceId) !== undefined) return;
  writer.insert(registrations, { applianceId, jobId, state: 'recording', by: 'office' });
}

export type RegistrationWithGaps = RegistrationRow & {
  readonly gaps: readonly PacketGap[];
  readonly missingCount: number;
};

export function readRegistration(context: HandlerContext, applianceId: string): RegistrationWithGaps | undefined {
  const [row] = rowsOf(context, [applianceId], (runId) => listPacketGaps(context.db, runId, context.now));
  return row === undefined ? undefined : { ...row, gaps: row.gaps ?? [], missingCount: row.gaps?.length ?? 0 };
}

/** A page: gaps are counted for its lines alone, as long as a page may take; the rest is there when it is asked again. */
export function listRegistrationRows(
  context: HandlerContext,
  input: ParsedInputOf<'registrations.list'>,
): OutputOf<'registrations.list'> {
  const { raw } = context.store;
  const { applianceIds, next } = listRegistrationPage(raw, input);
  const uncounted = countGapsOf(context, PAGE_BUDGET_MS, applianceIds);
  const rows = rowsOf(context, applianceIds, (runId) => {
    const count = findGapCount(raw, runId);
    return count === null ? null : { length: count };
  });
  return { rows: rows.map(({ gaps, ...row }) => ({ ...row, missingCount: gaps?.length ?? null })), next, uncounted };
}

/** In the order of the ids. `gapsOf`: null where nobody has counted them. */
function rowsOf<G extends { readonly length: number }>(
  context: HandlerContext,
  applianceIds: readonly string[],
  gapsOf: (runId: string) => G | null,
): (Omit<RegistrationRow, 'missingCount'> & { readonly gaps: G | readonly never[] | null })[] {
  const { db, now } = context;
  const byAppliance = new Map(listRegistrations(db, applianceIds).map((row) => [row.appliance.id, row]));
  return readDueFacts(context.store.raw, applianceIds, now).flatMap(({ applianceId, facts, timeZone }) => {
    const row = byAppliance.get(applianceId);
    if (row === undefined) return [];
    // What was handed in already is not asked for again.
    const isOpen = row.registration.state === 'recording';
    const gaps = row.runId === null || !isOpen ? [] : gapsOf(row.runId);
    const isReady = isOpen && row.sealedAt !== null && gaps?.length === 0;
    return [
      {
        applianceId,
        registrationId: row.registration.id,
        serial: row.appliance.serial,
        maker: row.appliance.maker,
        model: row.appliance.model,
        customerName: row.customerName,
        street: row.street,
        city: row.city,
        state: isReady ? ('ready' as const) : (row.registration.state as RegistrationRow['state']),
        by: row.registration.by as RegistrationRow['by'],
        deadline: registrationDeadline({ ...facts, today: dayAt(timeZone, now) }),
        runId: row.runId,
        visitId: row.registration.jobId === null ? null : (findLastVisitOfJob(db, row.registration.jobId)?.id ?? null),
        followUpOn: row.registration.followUpOn,
        gaps,
      },
    ];
  });
}
