/** What belongs to a person alone: as a customer their sites, what stands or stood there, and the work on it. */
import type { Database } from 'better-sqlite3';
import { rawStatement } from '../rawStatement.ts';

export type PersonScope = {
  readonly partyId: string;
  /** null: never a customer. */
  readonly customerId: string | null;
  readonly siteIds: readonly string[];
  /** Of these, where nobody else has a part: their address is the person's own. */
  readonly soleSiteIds: readonly string[];
  readonly applianceIds: readonly string[];
  readonly jobIds: readonly string[];
  readonly visitIds: readonly string[];
  readonly runIds: readonly string[];
};

export function readPersonScope(raw: Database, partyId: string): PersonScope {
  const ids = (sql: string, ...values: readonly (string | null)[]): readonly string[] =>
    rawStatement(raw, sql)
      .pluck()
      .all(...values) as string[];
  const [customerId = null] = ids('SELECT id FROM customers WHERE party_id = ?', partyId);
  const siteIds = ids('SELECT id FROM sites WHERE customer_id = ?', customerId);
  const sites = JSON.stringify(siteIds);
  const soleSiteIds = ids(
    `SELECT value FROM json_each(?) WHERE NOT EXISTS (SELECT 1 FROM party_roles r JOIN parties p ON p.id = r.party_id
       WHERE r.site_id = value AND r.party_id <> ? AND r.to_on IS NULL AND r.role IN ('owner', 'landlord', 'occupant') AND p.erased_at IS NULL)`,
    sites,
    partyId,
  );
  const applianceIds = ids(
    'SELECT DISTINCT appliance_id FROM placements WHERE site_id IN (SELECT value FROM json_each(?))',
    sites,
  );
  const visitIds = ids('SELECT id FROM visits WHERE site_id IN (SELECT value FROM json_each(?))', sites);
  // A boiler that came from elsewhere brought jobs along that were done there.
  const jobIds = ids(
    `SELECT job_id FROM visit_jobs WHERE visit_id IN (SELECT value FROM json_each(?))
     UNION SELECT j.id FROM jobs j WHERE NOT EXISTS (SELECT 1 FROM visit_jobs l WHERE l.job_id = j.id)
       AND j.appliance_id IN (SELECT appliance_id FROM placements WHERE to_on IS NULL AND site_id IN (SELECT value FROM json_each(?)))`,
    JSON.stringify(visitIds),
    sites,
  );
  return {
    partyId,
    customerId,
    siteIds,
    soleSiteIds,
    applianceIds,
    jobIds,
    visitIds,
    runIds: ids('SELECT id FROM runs WHERE job_id IN (SELECT value FROM json_each(?))', JSON.stringify(jobIds)),
  };
}
