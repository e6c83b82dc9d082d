/** Everything on file that is about a person, table by table, as it is given out to them. */
import type { Database } from 'better-sqlite3';
import { rawStatement } from '../rawStatement.ts';
import type { PersonScope } from './personScope.ts';

export type PersonTable = { readonly name: string; readonly rows: readonly Readonly<Record<string, unknown>>[] };

const IN = (name: string) => `IN (SELECT value FROM json_each(@${name}))`;

/** Ids of the store stay in: they tie the tables together. */
export const PERSON_QUERIES: Readonly<Record<string, string>> = {
  person: `SELECT id, kind, name, contact_name, language, email, phone_typed, street, postcode, city, region, country, note, erased_at
    FROM parties WHERE id = @partyId`,
  customer: 'SELECT id, since, note FROM customers WHERE id = @customerId',
  consents: 'SELECT purpose, channel, granted, given_on, source FROM consents WHERE party_id = @partyId',
  roles: `SELECT r.role, s.street, s.city, r.from_on, r.to_on, r.note FROM party_roles r LEFT JOIN sites s ON s.id = r.site_id
    WHERE r.party_id = @partyId`,
  sites: `SELECT id, label, street, postcode, city, region, country, latitude, longitude, building_kind, access, altitude_m,
    system_height_m, system_volume_l FROM sites WHERE id ${IN('sites')}`,
  appliances: `SELECT id, maker, model, serial, plate_fuel, rated_input_kw, note FROM appliances WHERE id ${IN('appliances')}`,
  appliance_dates: `SELECT appliance_id, kind, happened_on, precision, source FROM appliance_dates WHERE appliance_id ${IN('appliances')}`,
  placements: `SELECT appliance_id, site_id, unit, position, from_on, to_on, end_reason FROM placements WHERE site_id ${IN('sites')}`,
  emitters: `SELECT site_id, emitter, zone, rated_kw FROM site_emitters WHERE site_id ${IN('sites')}`,
  gas_supplies: `SELECT l.site_id, l.unit, g.id, g.kind, g.fuel, g.number FROM gas_supply_sites l
    JOIN gas_supplies g ON g.id = l.gas_supply_id WHERE l.site_id ${IN('sites')}`,
  // On a meter that is shared, what hangs on it is others' too.
  gas_loads: `SELECT gas_supply_id, name, input_kw FROM gas_loads WHERE gas_supply_id IN
    (SELECT gas_supply_id FROM gas_supply_sites GROUP BY 1 HAVING min(site_id ${IN('sites')}) = 1)`,
  fuel_states: `SELECT appliance_id, fuel, from_on, conversion_kit, orifice, proof FROM fuel_states
    WHERE appliance_id ${IN('appliances')}`,
  permits: `SELECT site_id, appliance_id, number, issuer, state, given_on, end_reason FROM permits WHERE site_id ${IN('sites')}`,
  site_transfers: `SELECT site_id, changed_on, taken_back_why FROM site_transfers
    WHERE @customerId IN (from_customer_id, to_customer_id)`,
  visits: `SELECT id, site_id, state, planned_on, planned_from, planned_to, started_at, ended_at, outcome, outcome_reason, note
    FROM visits WHERE id ${IN('visits')}`,
  jobs: `SELECT id, kind, appliance_id, opened_at, closed_at, is_chargeable, charge_reason, outside_invoice_number,
    outside_invoice_on, latest_why, note FROM jobs WHERE id ${IN('jobs')}`,
  wasted_trips: `SELECT visit_id, code, note, recorded_at FROM wasted_trips WHERE visit_id ${IN('visits')}`,
  photo_requests: `SELECT job_id, view, asked_whom, asked_at, received_at FROM photo_requests WHERE job_id ${IN('jobs')}`,
  readiness: `SELECT job_id, item_key, answer, note, confirmed_by FROM readiness_answers WHERE job_id ${IN('jobs')}`,
  readings: `SELECT run_id, quantity, point, sample, typed_text, typed_unit, value_own, not_measured_reason, measured_at FROM readings
    WHERE superseded_by_id IS NULL AND run_id ${IN('runs')}`,
  answers: `SELECT run_id, item_key, value, reason, at FROM run_answers WHERE run_id ${IN('runs')}`,
  tunings: `SELECT run_id, item_key, started_at, finished_at, interrupted_at, interrupted_reason FROM run_tunings
    WHERE run_id ${IN('runs')}`,
  lockouts: `SELECT run_id, happened_at, code, outdoor_typed_text, outdoor_typed_unit FROM run_lockouts WHERE run_id ${IN('runs')}`,
  parts: `SELECT appliance_id, part_number, name, serial, fitted_on FROM fitted_parts WHERE appliance_id ${IN('appliances')}`,
  signatures: `SELECT run_id, item_key, name, at FROM sign_offs
    WHERE party_id = @partyId OR (by = 'occupant' AND run_id ${IN('runs')})`,
  make_safes: `SELECT appliance_id, what, isolated_how, told_whom, delivered_how, opened_at, closed_at, closed_reason FROM make_safes
    WHERE site_id ${IN('sites')}`,
  messages:
    'SELECT kind, channel, language, subject, body, about_on, prepared_at FROM messages WHERE party_id = @partyId',
  message_events: `SELECT e.message_id, e.kind, e.happened_on, e.note FROM message_events e
    JOIN messages m ON m.id = e.message_id WHERE m.party_id = @partyId`,
  first_year_contacts: `SELECT appliance_id, kind, outcome, happened_on, note FROM first_year_contacts
    WHERE appliance_id ${IN('appliances')}`,
  notices: `SELECT appliance_id, recall_id, outcome, happened_on, note FROM recall_outcomes WHERE appliance_id ${IN('appliances')}`,
  agreements:
    'SELECT number, appliance_id, every_months, from_on, to_on FROM service_agreements WHERE party_id = @partyId',
  registrations: `SELECT appliance_id, state, "by", owner_consent_on, submitted_on, confirmed_on, number, taken_back_why, note
    FROM registrations
    WHERE appliance_id ${IN('appliances')}`,
  claims: `SELECT appliance_id, part_number, part_name, opened_on, outcome, decided_on, refused_because, note FROM claims
    WHERE appliance_id ${IN('appliances')}`,
  sealed_values: 'SELECT seal_id, path, value FROM seal_disclosures WHERE party_id = @partyId AND value IS NOT NULL',
};

export function listPersonRows(raw: Database, scope: PersonScope): readonly PersonTable[] {
  const values = {
    partyId: scope.partyId,
    customerId: scope.customerId,
    sites: JSON.stringify(scope.siteIds),
    appliances: JSON.stringify(scope.applianceIds),
    visits: JSON.stringify(scope.visitIds),
    jobs: JSON.stringify(scope.jobIds),
    runs: JSON.stringify(scope.runIds),
  };
  return Object.entries(PERSON_QUERIES).map(([name, sql]) => ({
    name,
    rows: rawStatement(raw, sql).all(values) as Record<string, unknown>[],
  }));
}
