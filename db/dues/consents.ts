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
