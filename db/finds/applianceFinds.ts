/** Appliances by serial, maker, model, street and the people there now. */
import { addToCache, cacheTables, cacheTrigger, refreshCache, type SearchCache } from './searchCache.ts';

const TABLE = 'appliance_finds';
const ID = 'appliance_id';
const HERE = 'to_on IS NULL';
const refresh = (which: string): string => refreshCache(TABLE, ID, which);

const NAMES_THERE = (where: string): string =>
  `coalesce((SELECT group_concat(rp.search_text, ' ') FROM party_roles r JOIN parties rp ON rp.id = r.party_id WHERE r.${HERE} AND ${where}), '')`;

export const APPLIANCE_FINDS: SearchCache = {
  table: TABLE,
  idColumn: ID,
  parts: [
    ...cacheTables({
      table: TABLE,
      idColumn: ID,
      idSql: 'a.id',
      serialsSql: 'a.serial_key',
      wordsSql: `lower(a.maker || ' ' || a.model) || ' ' || coalesce(s.search_text, '') || ' ' || coalesce(p.search_text, '') || ' ' || ${NAMES_THERE('r.site_id = s.id')} || ' ' || ${NAMES_THERE('r.appliance_id = a.id')}`,
      from: `appliances a
        LEFT JOIN placements pl ON pl.id = (SELECT min(id) FROM placements WHERE appliance_id = a.id AND ${HERE})
        LEFT JOIN sites s ON s.id = pl.site_id
        LEFT JOIN customers c ON c.id = s.customer_id
        LEFT JOIN parties p ON p.id = c.party_id`,
    }),
    cacheTrigger('find_appliance_added', 'AFTER INSERT ON appliances', addToCache(TABLE, ID, 'new.id')),
    cacheTrigger(
      'find_appliance_changed',
      'AFTER UPDATE OF serial_key, maker, model ON appliances',
      refresh(`${ID} = new.id`),
    ),
    cacheTrigger('find_appliance_removed', 'AFTER DELETE ON appliances', `DELETE FROM ${TABLE} WHERE ${ID} = old.id`),
    ...(['INSERT', 'UPDATE', 'DELETE'] as const).map((event) =>
      cacheTrigger(
        `find_placement_${event.toLowerCase()}`,
        `AFTER ${event} ON placements`,
        refresh(`${ID} = ${event === 'DELETE' ? 'old' : 'new'}.appliance_id`),
      ),
    ),
    cacheTrigger(
      'find_site_changed',
      'AFTER UPDATE OF search_text, customer_id ON sites',
      refresh(`${ID} IN (SELECT appliance_id FROM placements WHERE site_id = new.id AND ${HERE})`),
    ),
    cacheTrigger(
      'find_party_changed',
      'AFTER UPDATE OF search_text ON parties',
      refresh(`${ID} IN (
        SELECT pl.appliance_id FROM customers c JOIN sites s ON s.customer_id = c.id JOIN placements pl ON pl.site_id = s.id
          WHERE c.party_id = new.id AND pl.${HERE}
        UNION SELECT pl.appliance_id FROM party_roles r JOIN placements pl ON pl.site_id = r.site_id
          WHERE r.party_id = new.id AND r.${HERE} AND pl.${HERE}
        UNION SELECT appliance_id FROM party_roles WHERE party_id = new.id AND ${HERE})`),
    ),
    ...(['INSERT', 'UPDATE', 'DELETE'] as const).map((event) => {
      const row = event === 'DELETE' ? 'old' : 'new';
      return cacheTrigger(
        `find_role_${event.toLowerCase()}`,
        `AFTER ${event} ON party_roles`,
        refresh(
          `${ID} = ${row}.appliance_id OR ${ID} IN (SELECT appliance_id FROM placements WHERE site_id = ${row}.site_id AND ${HERE})`,
        ),
      );
    }),
  ],
};
