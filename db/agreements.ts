/** Queries over service agreements and the people one can be made with. */
import { asc, desc, eq } from 'drizzle-orm';
import type { Store } from './openStore.ts';
import { rawStatement } from './rawStatement.ts';
import { parties, serviceAgreements } from './schema/index.ts';

export type AgreementRow = typeof serviceAgreements.$inferSelect;

export function listAgreements({ db }: Pick<Store, 'db'>, applianceId: string) {
  return db
    .select({ agreement: serviceAgreements, partyName: parties.name })
    .from(serviceAgreements)
    .innerJoin(parties, eq(parties.id, serviceAgreements.partyId))
    .where(eq(serviceAgreements.applianceId, applianceId))
    .orderBy(desc(serviceAgreements.fromOn), asc(serviceAgreements.id))
    .all();
}

export function findAgreement({ db }: Pick<Store, 'db'>, agreementId: string): AgreementRow | undefined {
  return db.select().from(serviceAgreements).where(eq(serviceAgreements.id, agreementId)).get();
}

/** The customer first, then whoever has a part in the site or the appliance now. */
export function listPartiesThere(
  { raw }: Pick<Store, 'raw'>,
  applianceId: string,
): readonly { readonly partyId: string; readonly name: string }[] {
  return rawStatement(raw, THERE).all({ applianceId }) as { partyId: string; name: string }[];
}

const THERE = `
  WITH place AS (SELECT site_id FROM placements WHERE appliance_id = @applianceId AND to_on IS NULL)
  SELECT p.id AS partyId, p.name FROM (
    SELECT c.party_id, 0 AS rank FROM place JOIN sites s ON s.id = place.site_id JOIN customers c ON c.id = s.customer_id
    UNION ALL
    SELECT r.party_id, 1 FROM party_roles r
    WHERE r.to_on IS NULL AND (r.appliance_id = @applianceId OR r.site_id IN (SELECT site_id FROM place))
  ) t JOIN parties p ON p.id = t.party_id GROUP BY p.id ORDER BY min(t.rank), p.name`;
