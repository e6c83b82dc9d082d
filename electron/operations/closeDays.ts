/** Closes the days on which something was sealed: what is sealed later is held against their heads. */
import type { Database } from 'better-sqlite3';
import { listDayHeads, listOpenDays, listSealsOfDay } from '../../db/dayHeads.ts';
import { dayHeads } from '../../db/schema/index.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { brokenDays, dayHead } from '../sealing/dayHead.ts';

/** Each day before the one of this instant. */
export function closeDays(writer: StoreWriter, raw: Database, now: string): void {
  const open = listOpenDays(raw, now.slice(0, 10));
  let previousSha256 = open.length === 0 ? null : (listDayHeads(raw).at(-1)?.sha256 ?? null);
  for (const day of open) {
    const seals = listSealsOfDay(raw, day);
    const sha256 = dayHead(day, seals, previousSha256);
    writer.insert(dayHeads, { day, sealCount: seals.length, sha256, computedAt: writer.now });
    previousSha256 = sha256;
  }
}

/** Days whose heads do not come out any more, in a store or in a copy of one. */
export function findBrokenDays(raw: Database): readonly string[] {
  return brokenDays(listDayHeads(raw), (day) => listSealsOfDay(raw, day));
}
