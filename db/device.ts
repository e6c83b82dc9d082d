/** What the store knows of the laptop it is on: which one it is, since when, and when it wrote last. */
import type { Database } from 'better-sqlite3';
import { rawStatement } from './rawStatement.ts';

export function findDeviceId(raw: Database): string {
  return rawStatement(raw, 'SELECT device_id FROM device').pluck().get() as string;
}

/** By the log's own clock, which never runs backwards; 0 where nothing was written yet. */
export function lastChangeMs(raw: Database): number {
  const hlc = rawStatement(raw, 'SELECT last_hlc FROM device').pluck().get() as string;
  return Number(hlc.split('-')[0] ?? 0);
}

export function storeMadeAt(raw: Database): string {
  return rawStatement(raw, 'SELECT created_at FROM device').pluck().get() as string;
}
