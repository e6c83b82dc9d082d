/** Everything on file that is about a person, table by table, as it is given out to them. */
import type { Database } from 'better-sqlite3';
import { rawStatement } from '../rawStatement.ts';
import type { PersonScope } from './personScope.ts';

export type PersonTable = { readonly name: string; readonly rows: readonly Readonly<Record<string, unknown>>[] };

const IN = (name: string) => `IN (SELECT value FROM json_each(@${name}))`;

/** Ids of the store stay in: they tie the tables together. */
const QUERIES: Readonly<Record<string, string>> = {
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
  visits: `SELECT id, site_id, state, planned_on, planned_from, planned_to, started_at, ended_at, outcome, outcome_reason, note
    FROM visits WHERE id ${IN('visits')}`,
  jobs: `SELECT id, kind, appliance_id, opened_at, closed_at, is_chargeable, charge_reason, outside_invoice_number,
    outside_invoice_on, note FROM jobs WHERE id ${IN('jobs')}`,
  readiness: `SELECT job_id, item_key, answer, note, confirmed_by FROM readiness_answers WHERE job_id ${IN('jobs')}`,
  readings: `SELECT run_id, quantity, point, sample, typed_text, typed_unit, value_own, measured_at FROM readings
    WHERE superseded_by_id IS NULL AND run_id ${IN('runs')}`,
  answers: `SELECT run_id, item_key, value, reason, at FROM run_answers WHERE run_id ${IN('runs')}`,
  signatures: `SELECT run_id, item_key, name, at FROM sign_offs
    WHERE party_id = @partyId OR (by = 'occupant' AND run_id ${IN('runs')})`,
  make_safes: `SELECT appliance_id, what, told_whom, delivered_how, opened_at, closed_at, closed_reason FROM make_safes
    WHERE site_id ${IN('sites')}`,
  messages:
    'SELECT kind, channel, language, subject, body, about_on, prepared_at FROM messages WHERE party_id = @partyId',
  agreements:
    'SELECT number, appliance_id, every_months, from_on, to_on FROM service_agreements WHERE party_id = @partyId',
  registrations: `SELECT appliance_id, state, "by", owner_consent_on, submitted_on, confirmed_on, number, note FROM registrations
    WHERE appliance_id ${IN('appliances')}`,
  claims: `SELECT appliance_id, part_number, part_name, opened_on, outcome, decided_on, note FROM claims
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
  return Object.entries(QUERIES).map(([name, sql]) => ({
    name,
    rows: rawStatement(raw, sql).all(values) as Record<string, unknown>[],
  }));
}
