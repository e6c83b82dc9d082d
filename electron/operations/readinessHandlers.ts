/** Photos asked for, and wasted trips with their reasons, counted by whose work was not ready. */
import { findAttachment } from '../../db/attachments.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import {
  findWastedTrip,
  listPartiesInRole,
  listPhotoRequests,
  listRequestAttachments,
  listWastedTrips,
} from '../../db/readiness.ts';
import { attachmentLinks, photoRequests, visits, wastedTrips } from '../../db/schema/index.ts';
import { findJob, findVisit } from '../../db/visits.ts';
import type { OutputOf } from '../contract/index.ts';
import type { WastedTripCode } from '../contract/readiness.ts';
import { actorOf, fail, type Handlers, notFound } from './handler.ts';

export const readinessHandlers: Handlers<
  | 'jobs.getPhotos'
  | 'jobs.askPhotos'
  | 'jobs.receivePhoto'
  | 'wastedTrips.get'
  | 'wastedTrips.record'
  | 'wastedTrips.report'
> = {
  'jobs.getPhotos': (input, context) => {
    const rows = listPhotoRequests(context.db, input.jobId);
    const links = listRequestAttachments(
      context.db,
      rows.map(({ request }) => request.id),
    );
    return rows.map(({ request, askedByName }) => ({
      view: request.view as OutputOf<'jobs.getPhotos'>[number]['view'],
      askedWhom: request.askedWhom,
      askedByName,
      askedAt: request.askedAt,
      receivedAt: request.receivedAt,
      attachmentIds: links.filter((link) => link.entityId === request.id).map((link) => link.attachmentId),
    }));
  },

  'jobs.askPhotos': (input, context) => {
    requireJob(context.db, input.jobId);
    const asked = { askedWhom: input.askedWhom, askedById: actorOf(context).staffId, askedAt: context.now };
    context.write((writer) => {
      const known = listPhotoRequests(writer.db, input.jobId);
      for (const view of new Set(input.views)) {
        const row = known.find(({ request }) => request.view === view);
        if (row === undefined) writer.insert(photoRequests, { jobId: input.jobId, view, ...asked });
        else writer.update(photoRequests, row.request.id, asked);
      }
    });
    context.services.changed(['jobs']);
    return {};
  },

  'jobs.receivePhoto': (input, context) => {
    requireJob(context.db, input.jobId);
    if (findAttachment(context.db, input.attachmentId) === undefined)
      return notFound('attachments', input.attachmentId);
    context.write((writer) => {
      const known = listPhotoRequests(writer.db, input.jobId).find(({ request }) => request.view === input.view);
      // A photo that came without being asked for is as good.
      const requestId =
        known?.request.id ??
        writer.insert(photoRequests, {
          jobId: input.jobId,
          view: input.view,
          askedById: actorOf(context).staffId,
          askedAt: context.now,
        });
      writer.update(photoRequests, requestId, { receivedAt: context.now });
      writer.insert(attachmentLinks, {
        attachmentId: input.attachmentId,
        entity: 'photo_requests',
        entityId: requestId,
        itemKey: input.view,
      });
    });
    context.services.changed(['jobs']);
    return {};
  },

  'wastedTrips.get': (input, context) => {
    const found = findWastedTrip(context.db, input.visitId);
    if (found === undefined) return null;
    const { code, isChargeable, note, recordedAt } = found.trip;
    return {
      visitId: input.visitId,
      code: code as WastedTripCode,
      isChargeable,
      note,
      recordedByName: found.recordedByName,
      recordedAt,
    };
  },

  'wastedTrips.record': (input, context) => {
    const visit = findVisit(context.db, input.visitId) ?? notFound('visits', input.visitId);
    const isAhead = ['pencilled', 'planned', 'travelling'].includes(visit.state);
    if (!isAhead && visit.outcome !== 'site-not-ready' && visit.outcome !== 'return-needed')
      return fail('visit-not-wasted', { state: visit.state as 'started' });
    const { visitId, ...fields } = input;
    const recorded = { ...fields, recordedById: actorOf(context).staffId, recordedAt: context.now };
    context.write((writer) => {
      const known = findWastedTrip(writer.db, visitId);
      if (known === undefined) writer.insert(wastedTrips, { visitId, ...recorded });
      else writer.update(wastedTrips, known.trip.id, recorded);
      if (isAhead)
        writer.update(visits, visitId, {
          state: 'finished',
          outcome: 'site-not-ready',
          outcomeReason: input.note ?? input.code.replaceAll('-', ' '),
          endedAt: context.now,
          revision: visit.revision + 1,
        });
    });
    context.services.changed(['visits', 'jobs']);
    return {};
  },

  'wastedTrips.report': (input, context) => {
    const trips = listWastedTrips(context.db, input);
    const roles = listPartiesInRole(context.db, input.by, [...new Set(trips.map(({ siteId }) => siteId))]);
    const byParty = Map.groupBy(
      trips.map((row) => ({
        ...row,
        party:
          roles.find(
            (role) =>
              role.siteId === row.siteId &&
              (role.fromOn === null || role.fromOn <= row.on) &&
              (role.toOn === null || row.on <= role.toOn),
          ) ?? null,
      })),
      ({ party }) => party?.partyId ?? null,
    );
    return {
      trips: trips.length,
      rows: [...byParty]
        .map(([partyId, rows]) => ({
          partyId,
          name: rows[0]?.party?.name ?? null,
          trips: rows.length,
          chargeable: rows.filter(({ trip }) => trip.isChargeable).length,
          codes: countCodes(rows.map(({ trip }) => trip.code as WastedTripCode)),
        }))
        .toSorted((a, b) => b.trips - a.trips),
    };
  },
};

function requireJob(db: ReadableDb, jobId: string): void {
  if (findJob(db, jobId) === undefined) notFound('jobs', jobId);
}

function countCodes(codes: readonly WastedTripCode[]): { readonly code: WastedTripCode; readonly count: number }[] {
  return [...Map.groupBy(codes, (code) => code)]
    .map(([code, all]) => ({ code, count: all.length }))
    .toSorted((a, b) => b.count - a.count);
}
