/** What speaks against erasing a person now; the owner decides. */
import type { Database } from 'better-sqlite3';
import type { PersonHold } from '../../domain/vocabulary/people.ts';
import { rawStatement } from '../rawStatement.ts';
import type { PersonScope } from './personScope.ts';

const IN = (name: string) => `IN (SELECT value FROM json_each(@${name}))`;

const QUERIES: Readonly<Record<PersonHold, string>> = {
  'make-safe-open': `SELECT count(*) FROM make_safes WHERE closed_at IS NULL AND site_id ${IN('sites')}`,
  'cover-may-run': `SELECT count(*) FROM placements WHERE to_on IS NULL AND site_id ${IN('sites')}`,
  'claim-open': `SELECT count(*) FROM claims WHERE outcome = 'open' AND appliance_id ${IN('appliances')}`,
  'registration-open': `SELECT count(*) FROM registrations WHERE state <> 'confirmed' AND appliance_id ${IN('appliances')}`,
  'agreement-runs': `SELECT count(*) FROM service_agreements WHERE party_id = @partyId AND (to_on IS NULL OR to_on >= @today)`,
  'visit-ahead': `SELECT count(*) FROM visits WHERE state IN ('pencilled', 'planned', 'travelling', 'started') AND id ${IN('visits')}`,
  'record-not-sealed': `SELECT count(*) FROM runs WHERE sealed_at IS NULL AND id ${IN('runs')}`,
};

export function personHolds(raw: Database, scope: PersonScope, today: string): { what: PersonHold; count: number }[] {
  const values = {
    partyId: scope.partyId,
    today,
    sites: JSON.stringify(scope.siteIds),
    appliances: JSON.stringify(scope.applianceIds),
    visits: JSON.stringify(scope.visitIds),
    runs: JSON.stringify(scope.runIds),
  };
  return (Object.keys(QUERIES) as PersonHold[])
    .map((what) => ({ what, count: rawStatement(raw, QUERIES[what]).pluck().get(values) as number }))
    .filter(({ count }) => count > 0);
}
