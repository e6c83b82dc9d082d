/** Registrations as lists show them: the deadline and the state are derived each time. */
import { listApplianceDates } from '../../db/appliances.ts';
import { findGapCount } from '../../db/dues/registrationGaps.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import { findLastVisitOfJob, findRegistration, listRegistrations } from '../../db/registrations.ts';
import { registrations } from '../../db/schema/index.ts';
import { findNewestRevision } from '../../db/sheets.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import type { KnownDate } from '../../domain/coverage/dateOrder.ts';
import { registrationDeadline } from '../../domain/coverage/registrationDeadline.ts';
import type { ModelSheet } from '../../domain/procedure/modelSheet.ts';
import type { PacketGap, RegistrationRow } from '../contract/registrations.ts';
import { countGaps } from './countGaps.ts';
import type { HandlerContext } from './handler.ts';
import { listPacketGaps } from './packetInput.ts';
import { dayIn } from './today.ts';

/** The office registers unless somebody decides otherwise. */
export function ensureRegistration(writer: StoreWriter, applianceId: string, jobId: string): void {
  if (findRegistration(writer.db, applianceId) !== undefined) return;
  writer.insert(registrations, { applianceId, jobId, state: 'recording', by: 'office' });
}

export type RegistrationWithGaps = RegistrationRow & { readonly gaps: readonly PacketGap[] };

type ListFilter = { readonly openOnly: boolean; readonly applianceId?: string; readonly followUpBy?: string | null };

export function readRegistrationRows(db: ReadableDb, now: string, filter: ListFilter): RegistrationWithGaps[] {
  return rowsOf(db, now, filter, (runId) => listPacketGaps(db, runId, now));
}

/** For lists: how many gaps, counted once and kept until something they rest on changes. */
export function listRegistrationRows(
  context: HandlerContext,
  filter: Pick<ListFilter, 'openOnly' | 'followUpBy'>,
): RegistrationRow[] {
  countGaps(context, Number.POSITIVE_INFINITY);
  const { raw } = context.store;
  return rowsOf(context.db, context.now, filter, (runId) => ({ length: findGapCount(raw, runId) })).map(
    ({ gaps: _gaps, ...row }) => row,
  );
}

function rowsOf<G extends { readonly length: number }>(
  db: ReadableDb,
  now: string,
  filter: ListFilter,
  gapsOf: (runId: string) => G,
): (RegistrationRow & { readonly gaps: G | readonly never[] })[] {
  return listRegistrations(db, filter)
    .map((row) => {
      const sheet = row.appliance.sheetId === null ? undefined : findNewestRevision(db, row.appliance.sheetId);
      // What was handed in already is not asked for again.
      const isOpen = row.registration.state === 'recording';
      const gaps = row.runId === null || !isOpen ? [] : gapsOf(row.runId);
      const isReady = isOpen && row.sealedAt !== null && gaps.length === 0;
      return {
        applianceId: row.appliance.id,
        registrationId: row.registration.id,
        serial: row.appliance.serial,
        maker: row.appliance.maker,
        model: row.appliance.model,
        customerName: row.customerName,
        street: row.street,
        city: row.city,
        state: isReady ? ('ready' as const) : (row.registration.state as RegistrationRow['state']),
        by: row.registration.by as RegistrationRow['by'],
        deadline: registrationDeadline({
          cover: (sheet?.body as ModelSheet | undefined)?.cover ?? null,
          dates: listApplianceDates(db, row.appliance.id) as readonly KnownDate[],
          today: dayIn(row.timeZone ?? 'UTC', now),
        }),
        runId: row.runId,
        visitId: row.registration.jobId === null ? null : (findLastVisitOfJob(db, row.registration.jobId)?.id ?? null),
        followUpOn: row.registration.followUpOn,
        missingCount: gaps.length,
        gaps,
      };
    })
    .sort(
      (a, b) =>
        (a.deadline?.dueOn ?? '9999').localeCompare(b.deadline?.dueOn ?? '9999') || a.serial.localeCompare(b.serial),
    );
}
