/** Visits that are booked and not begun, with whom to tell about them and who comes. */
import type { Database } from 'better-sqlite3';
import { rawStatement } from './rawStatement.ts';

export type VisitContact = {
  readonly visitId: string;
  readonly plannedOn: string;
  readonly plannedFrom: string | null;
  readonly plannedTo: string | null;
  readonly startMin: number | null;
  readonly timeZone: string;
  readonly street: string;
  readonly postcode: string | null;
  readonly city: string;
  readonly region: string | null;
  readonly country: string;
  readonly applianceId: string;
  readonly maker: string;
  readonly model: string;
  readonly serial: string;
  readonly partyId: string;
  readonly partyName: string;
  readonly language: string | null;
  readonly email: string | null;
  readonly phone: string | null;
  readonly partyStreet: string | null;
  readonly partyPostcode: string | null;
  readonly partyCity: string | null;
  readonly partyRegion: string | null;
  readonly partyCountry: string | null;
  readonly technicianName: string | null;
};

/** By day and time. A pencilled visit is nobody's business yet; a visit to several boilers is told of once. */
export function listVisitContacts(
  raw: Database,
  days: { readonly from: string; readonly to: string },
): readonly VisitContact[] {
  return rawStatement(
    raw,
    `SELECT v.id AS visitId, v.planned_on AS plannedOn, v.planned_from AS plannedFrom, v.planned_to AS plannedTo,
       v.start_min AS startMin, s.time_zone AS timeZone, s.street, s.postcode, s.city, s.region, s.country,
       a.id AS applianceId, a.maker, a.model, a.serial, q.id AS partyId, q.name AS partyName, q.language, q.email,
       q.phone_typed AS phone, q.street AS partyStreet, q.postcode AS partyPostcode, q.city AS partyCity,
       q.region AS partyRegion, q.country AS partyCountry,
       (SELECT f.name FROM visit_crew w JOIN staff f ON f.id = w.staff_id WHERE w.visit_id = v.id
        ORDER BY w.role <> 'lead', w.role <> 'licensed', w.id LIMIT 1) AS technicianName
     FROM visits v
     JOIN sites s ON s.id = v.site_id
     JOIN customers c ON c.id = s.customer_id
     JOIN parties q ON q.id = c.party_id
     JOIN appliances a ON a.id = (SELECT j.appliance_id FROM visit_jobs l JOIN jobs j ON j.id = l.job_id
       WHERE l.visit_id = v.id ORDER BY l.id LIMIT 1)
     WHERE v.planned_on BETWEEN ? AND ? AND v.state IN ('planned', 'travelling') AND v.started_at IS NULL AND q.erased_at IS NULL
     ORDER BY v.planned_on, v.planned_from, v.id`,
  ).all(days.from, days.to) as VisitContact[];
}
