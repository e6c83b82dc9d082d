/** Photos asked for before a startup, and trips that were wasted: why, and with whose work. */
import { z } from 'zod';
import { PHOTO_VIEWS, WASTED_TRIP_CODES } from '../../domain/vocabulary/work.ts';
import { day, id, instant, nothing, operation, optionalLine, words } from './operation.ts';
import { visitState } from './visits.ts';

export const photoView = z.enum(PHOTO_VIEWS);

export const wastedTripCode = z.enum(WASTED_TRIP_CODES);
export type WastedTripCode = z.output<typeof wastedTripCode>;

const wastedTrip = z.strictObject({
  visitId: id,
  code: wastedTripCode,
  isChargeable: z.boolean(),
  note: words,
  recordedByName: z.string(),
  recordedAt: instant,
});

const reportRow = z.strictObject({
  /** null: nobody is on file in that part for the site. */
  partyId: id.nullable(),
  name: z.string().nullable(),
  trips: z.number().int(),
  chargeable: z.number().int(),
  codes: z.array(z.strictObject({ code: wastedTripCode, count: z.number().int() })),
});

export const readinessOperations = {
  'jobs.getPhotos': operation({
    access: 'signed-in',
    input: z.strictObject({ jobId: id }),
    output: z.array(
      z.strictObject({
        view: photoView,
        askedWhom: optionalLine,
        askedByName: z.string(),
        askedAt: instant,
        receivedAt: instant.nullable(),
        attachmentIds: z.array(id),
      }),
    ),
  }),
  /** Once more for the same view: asked again, what came stays. */
  'jobs.askPhotos': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ jobId: id, views: z.array(photoView).min(1).max(3), askedWhom: optionalLine }),
    output: nothing,
  }),
  'jobs.receivePhoto': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ jobId: id, view: photoView, attachmentId: id }),
    output: nothing,
  }),
  'wastedTrips.get': operation({
    access: 'signed-in',
    input: z.strictObject({ visitId: id }),
    output: wastedTrip.nullable(),
  }),
  /**
   * For a visit that ended because the site was not ready, or one that was driven to and could not begin: that one ends here.
   * A reason already given is replaced.
   */
  'wastedTrips.record': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ visitId: id, code: wastedTripCode, isChargeable: z.boolean(), note: words }),
    output: nothing,
    errors: { 'visit-not-wasted': z.strictObject({ state: visitState }) },
  }),
  /** By whoever built or fitted at the site, most trips first. */
  'wastedTrips.report': operation({
    access: 'signed-in',
    input: z.strictObject({ from: day, to: day, by: z.enum(['builder', 'fitter']) }),
    output: z.strictObject({ trips: z.number().int(), rows: z.array(reportRow) }),
  }),
} as const;
