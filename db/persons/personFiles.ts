/** Files that show or name a person: photos and signatures of their visits, their letters, and lists of everybody made for printing or giving out. */
import type { Database } from 'better-sqlite3';
import { rawStatement } from '../rawStatement.ts';
import type { PersonScope } from './personScope.ts';

/** Lists of many people; what they say is on file and they can be made again. */
const MADE_OF_MANY = JSON.stringify(['export', 'person-export', 'day-sheet', 'week-overview', 'packet-batch']);

/** Attachments, by id. */
export function listPersonFiles(raw: Database, scope: PersonScope): readonly string[] {
  return rawStatement(
    raw,
    `WITH run AS (SELECT value AS id FROM json_each(@runs)), appliance AS (SELECT value AS id FROM json_each(@appliances)),
       site AS (SELECT value AS id FROM json_each(@sites)),
       -- A boiler that came from another site: what was linked to it there is not this person's.
       linked AS (
         SELECT id FROM run
         UNION SELECT id FROM make_safes WHERE site_id IN (SELECT id FROM site)
         UNION SELECT id FROM fuel_states WHERE appliance_id IN (SELECT id FROM appliance)
         UNION SELECT id FROM registrations WHERE appliance_id IN (SELECT id FROM appliance)
         UNION SELECT id FROM claims WHERE appliance_id IN (SELECT id FROM appliance)
         UNION SELECT id FROM appliance UNION SELECT id FROM site
         UNION SELECT value FROM json_each(@visits) UNION SELECT value FROM json_each(@jobs)),
       first AS (
         SELECT attachment_id AS id FROM attachment_links WHERE entity_id IN (SELECT id FROM linked)
         UNION SELECT attachment_id FROM issued_documents WHERE run_id IN (SELECT id FROM run)
         UNION SELECT packet_pdf_id FROM packet_batch_items WHERE run_id IN (SELECT id FROM run)
         UNION SELECT packet_zip_id FROM packet_batch_items WHERE run_id IN (SELECT id FROM run)
         UNION SELECT proof_attachment_id FROM registrations WHERE appliance_id IN (SELECT id FROM appliance)
         UNION SELECT signature_attachment_id FROM sign_offs WHERE by = 'occupant' AND (party_id = @partyId OR run_id IN (SELECT id FROM run))
         UNION SELECT attachment_id FROM messages WHERE party_id = @partyId
         UNION SELECT id FROM attachments WHERE subject IN (SELECT value FROM json_each(@many))
         UNION SELECT i.attachment_id FROM imports i JOIN op o ON o.device_id = i.device_id AND o.incarnation = i.incarnation
           AND o.device_seq BETWEEN i.first_seq AND i.last_seq WHERE o.entity = 'parties' AND o.entity_id = @partyId)
     SELECT id FROM attachments WHERE erased_at IS NULL AND (id IN (SELECT id FROM first) OR derived_from_id IN (SELECT id FROM first)
       OR id IN (SELECT attachment_id FROM attachment_links WHERE entity = 'attachments' AND entity_id IN (SELECT id FROM first)))`,
  )
    .pluck()
    .all({
      partyId: scope.partyId,
      runs: JSON.stringify(scope.runIds),
      appliances: JSON.stringify(scope.applianceIds),
      sites: JSON.stringify(scope.siteIds),
      visits: JSON.stringify(scope.visitIds),
      jobs: JSON.stringify(scope.jobIds),
      many: MADE_OF_MANY,
    }) as string[];
}

/** Of these hashes, those that no attachment needs any more. */
export function unneededFiles(raw: Database, hashes: readonly string[]): readonly string[] {
  return rawStatement(
    raw,
    'SELECT DISTINCT value FROM json_each(?) WHERE NOT EXISTS (SELECT 1 FROM attachments WHERE sha256 = value AND erased_at IS NULL)',
  )
    .pluck()
    .all(JSON.stringify(hashes)) as string[];
}
