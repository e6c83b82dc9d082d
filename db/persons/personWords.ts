/** The texts by which a person can be known wherever somebody wrote them: names, addresses, numbers, as they are and as they were. */
import type { Database } from 'better-sqlite3';
import { rawStatement } from '../rawStatement.ts';
import type { PersonScope } from './personScope.ts';

/** Shorter ones stand in too many other words. */
const SHORTEST = 4;

const PARTY_FIELDS = ['name', 'contactName', 'email', 'phoneTyped', 'phoneE164', 'street'];
const SITE_FIELDS = ['street', 'label', 'access'];

export function readPersonWords(raw: Database, scope: PersonScope): readonly string[] {
  const words = new Set<string>();
  const collect = (entity: string, ids: readonly string[], fields: readonly string[]) => {
    for (const id of ids) {
      const rows = rawStatement(raw, 'SELECT fields FROM op WHERE entity = ? AND entity_id = ?')
        .pluck()
        .all(entity, id) as string[];
      for (const row of rows) {
        const logged = JSON.parse(row) as Record<string, { value: unknown }>;
        for (const field of fields) {
          const value = logged[field]?.value;
          if (typeof value === 'string' && value.trim().length >= SHORTEST) words.add(value.trim());
        }
      }
    }
  };
  // The log has each value the row ever had, the present one too.
  collect('parties', [scope.partyId], PARTY_FIELDS);
  collect('sites', scope.soleSiteIds, SITE_FIELDS);
  return [...words].filter((word) => !isSomebodyElses(raw, scope, word)).toSorted((a, b) => b.length - a.length);
}

/** A namesake, a neighbour of the same street, the firm itself: what is theirs stays. */
function isSomebodyElses(raw: Database, scope: PersonScope, word: string): boolean {
  const others = rawStatement(
    raw,
    `SELECT EXISTS (SELECT 1 FROM parties WHERE id <> @partyId
         AND lower(@word) IN (lower(name), lower(contact_name), lower(email), phone_typed, phone_e164, lower(street)))
       OR EXISTS (SELECT 1 FROM sites WHERE id NOT IN (SELECT value FROM json_each(@sites))
         AND lower(@word) IN (lower(street), lower(label), lower(city)))
       OR EXISTS (SELECT 1 FROM staff WHERE lower(@word) IN (lower(name), lower(email), phone))
       OR EXISTS (SELECT 1 FROM companies WHERE lower(@word) IN (lower(name), lower(email), phone, lower(street)))`,
  );
  return others.pluck().get({ partyId: scope.partyId, sites: JSON.stringify(scope.siteIds), word }) === 1;
}

/**
 * Puts `instead` where one of these stands as a whole word, in any case. A name of one word is left where it stands in small
 * letters: "none" and "garden" are names too.
 */
export function personReplacer(words: readonly string[], instead: string): (text: string) => string {
  if (words.length === 0) return (text) => text;
  const escaped = words.map((word) => word.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}])(?:${escaped.join('|')})(?![\\p{L}\\p{N}])`, 'giu');
  return (text) => text.replaceAll(pattern, (found) => (/^\p{Ll}+$/u.test(found) ? found : instead));
}
