/** What the record shows of the conditions of cover beyond dates and services: water, licence, use, owners, registration. */
import type { Database } from 'better-sqlite3';
import type { CoverFacts } from '../../domain/coverage/coverFacts.ts';
import { rawStatement } from '../rawStatement.ts';

export type CoverEvidence = Pick<CoverFacts, 'registration' | 'evidence' | 'ownerChanges' | 'place'> & {
  readonly timeZone: string;
};

export function readCoverEvidence(raw: Database, applianceId: string): CoverEvidence {
  const site = rawStatement(raw, SITE).get(applianceId) as SiteRow | undefined;
  const registration = rawStatement(
    raw,
    'SELECT submitted_on AS submittedOn, confirmed_on AS confirmedOn, number FROM registrations WHERE appliance_id = ?',
  ).get(applianceId) as CoverFacts['registration'] | undefined;
  return {
    registration: registration ?? { submittedOn: null, confirmedOn: null, number: null },
    evidence: {
      isWaterQualityRecorded: rawStatement(raw, WATER).get(applianceId) !== undefined,
      isInstallerLicensed: rawStatement(raw, LICENSED).get(applianceId) !== undefined,
      use: site === undefined ? null : site.buildingKind === 'commercial' ? 'commercial' : 'home',
    },
    ownerChanges: rawStatement(raw, OWNERS).all({ applianceId, siteId: site?.siteId ?? null }) as {
      on: string;
      toldMakerOn: string | null;
    }[],
    place: { country: site?.country ?? '', region: site?.region ?? null },
    timeZone: site?.timeZone ?? 'UTC',
  };
}

type SiteRow = {
  readonly siteId: string;
  readonly country: string;
  readonly region: string | null;
  readonly timeZone: string;
  readonly buildingKind: string;
};

const SITE = `
  SELECT s.id AS siteId, s.country, s.region, s.time_zone AS timeZone, s.building_kind AS buildingKind
  FROM placements p JOIN sites s ON s.id = p.site_id WHERE p.appliance_id = ? AND p.to_on IS NULL`;

/** Any of the three figures a maker asks for, read at a startup and not replaced. */
const WATER = `
  SELECT 1 FROM jobs j JOIN runs r ON r.job_id = j.id JOIN readings m ON m.run_id = r.id
  WHERE j.appliance_id = ? AND j.kind = 'startup' AND m.superseded_by_id IS NULL AND m.value_own IS NOT NULL
    AND m.quantity IN ('waterPh', 'hardnessMmolPerL', 'conductivityUsPerCm') LIMIT 1`;

/** Who sealed the startup held a licence on the day of that visit. */
const LICENSED = `
  SELECT 1 FROM jobs j JOIN runs r ON r.job_id = j.id JOIN seals e ON e.run_id = r.id JOIN visits v ON v.id = e.visit_id
    JOIN licences l ON l.staff_id = e.sealed_by_id AND l.valid_from <= v.planned_on AND v.planned_on <= l.valid_to AND l.withdrawn_at IS NULL
  WHERE j.appliance_id = ? AND j.kind = 'startup' LIMIT 1`;

/** An owner who came after another one; the first owner is no change. */
const OWNERS = `
  SELECT DISTINCT o.from_on AS "on",
    (SELECT n.told_on FROM transfer_notices n WHERE n.appliance_id = @applianceId AND n.changed_on = o.from_on) AS toldMakerOn
  FROM party_roles o
  WHERE o.role = 'owner' AND o.from_on IS NOT NULL AND (o.site_id = @siteId OR o.appliance_id = @applianceId)
    AND EXISTS (SELECT 1 FROM party_roles b WHERE b.role = 'owner' AND b.id <> o.id
      AND (b.site_id = @siteId OR b.appliance_id = @applianceId) AND coalesce(b.from_on, '') < o.from_on)
  ORDER BY 1`;
