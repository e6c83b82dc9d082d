/** Customers by name, phone, address, the streets of their sites and the serials that stand there now. */
import { addToCache, cacheTables, cacheTrigger, refreshCache, type SearchCache } from './searchCache.ts';

const TABLE = 'customer_finds';
const ID = 'customer_id';
const refresh = (which: string): string => refreshCache(TABLE, ID, which);
const ofSites = (where: string): string => `${ID} IN (SELECT customer_id FROM sites WHERE ${where})`;

export const CUSTOMER_FINDS: SearchCache = {
  table: TABLE,
  idColumn: ID,
  parts: [
    ...cacheTables({
      table: TABLE,
      idColumn: ID,
      idSql: 'c.id',
      serialsSql: `coalesce((SELECT group_concat(a.serial_key, ' ') FROM sites s JOIN placements pl ON pl.site_id = s.id AND pl.to_on IS NULL JOIN appliances a ON a.id = pl.appliance_id WHERE s.customer_id = c.id), '')`,
      wordsSql: `p.search_text || ' ' || coalesce((SELECT group_concat(s.search_text, ' ') FROM sites s WHERE s.customer_id = c.id), '')`,
      from: 'customers c JOIN parties p ON p.id = c.party_id',
    }),
    cacheTrigger('find_customer_added', 'AFTER INSERT ON customers', addToCache(TABLE, ID, 'new.id')),
    cacheTrigger('find_customer_changed', 'AFTER UPDATE OF party_id ON customers', refresh(`${ID} = new.id`)),
    cacheTrigger('find_customer_removed', 'AFTER DELETE ON customers', `DELETE FROM ${TABLE} WHERE ${ID} = old.id`),
    cacheTrigger(
      'find_customer_by_party',
      'AFTER UPDATE OF search_text ON parties',
      refresh(`${ID} IN (SELECT id FROM customers WHERE party_id = new.id)`),
    ),
    cacheTrigger('find_customer_by_site_insert', 'AFTER INSERT ON sites', refresh(`${ID} = new.customer_id`)),
    cacheTrigger(
      'find_customer_by_site_update',
      'AFTER UPDATE OF search_text, customer_id ON sites',
      refresh(`${ID} IN (old.customer_id, new.customer_id)`),
    ),
    cacheTrigger('find_customer_by_site_delete', 'AFTER DELETE ON sites', refresh(`${ID} = old.customer_id`)),
    cacheTrigger('find_customer_by_place_insert', 'AFTER INSERT ON placements', refresh(ofSites('id = new.site_id'))),
    cacheTrigger(
      'find_customer_by_place_update',
      'AFTER UPDATE ON placements',
      refresh(ofSites('id IN (old.site_id, new.site_id)')),
    ),
    cacheTrigger('find_customer_by_place_delete', 'AFTER DELETE ON placements', refresh(ofSites('id = old.site_id'))),
    cacheTrigger(
      'find_customer_by_serial',
      'AFTER UPDATE OF serial_key ON appliances',
      refresh(ofSites('id IN (SELECT site_id FROM placements WHERE appliance_id = new.id AND to_on IS NULL)')),
    ),
  ],
};
