/** What people agreed to and what they refused: per person, purpose and channel the newest word counts, of one day the later. */
import type { Database } from 'better-sqlite3';
import type { Channel, Purpose } from '../../domain/vocabulary/people.ts';
import { rawStatement } from '../rawStatement.ts';

/** By person, what was said of each channel; a channel nobody asked about is not in it. */
export function listConsents(
  raw: Database,
  partyIds: readonly string[],
  purpose: Purpose,
): ReadonlyMap<string, ReadonlyMap<Channel, boolean>> {
  const rows = rawStatement(
    raw,
    `SELECT c.party_id AS partyId, c.channel, c.granted FROM json_each(?) each
     JOIN consents c ON c.party_id = each.value AND c.purpose = ? ORDER BY c.given_on, c.rowid`,
  ).all(JSON.stringify([...new Set(partyIds)]), purpose) as { partyId: string; channel: Channel; granted: 0 | 1 }[];
  const byParty = new Map<string, Map<Channel, boolean>>();
  for (const { partyId, channel, granted } of rows) {
    const channels = byParty.get(partyId) ?? new Map<Channel, boolean>();
    channels.set(channel, granted === 1);
    byParty.set(partyId, channels);
  }
  return byParty;
}

/**
 * Since when whoever the appliance's site belongs to agrees to be registered with the maker, by the newest word of theirs on
 * whatever channel; null: nobody asked, or it was taken back.
 */
export function findRegistrationConsent(raw: Database, applianceId: string): string | null {
  const newest = rawStatement(
    raw,
    `SELECT c.given_on AS givenOn, c.granted FROM placements p
     JOIN sites s ON s.id = p.site_id
     JOIN customers k ON k.id = s.customer_id
     JOIN consents c ON c.party_id = k.party_id AND c.purpose = 'registration'
     WHERE p.appliance_id = ? AND p.to_on IS NULL
     ORDER BY c.given_on DESC, c.rowid DESC LIMIT 1`,
  ).get(applianceId) as { givenOn: string; granted: 0 | 1 } | undefined;
  return newest?.granted === 1 ? newest.givenOn : null;
}

/** The ways people agreed to be reminded of a service. */
export function listServiceConsents(
  raw: Database,
  partyIds: readonly string[],
): ReadonlyMap<string, readonly Channel[]> {
  return new Map(
    [...listConsents(raw, partyIds, 'service-due')].map(([partyId, channels]) => [
      partyId,
      [...channels].flatMap(([channel, isGranted]) => (isGranted ? [channel] : [])),
    ]),
  );
}
