/** What every connection that writes asks of SQLite. WAL's own default here is NORMAL, which may lose the last commits at a power cut: set FULL each time and look. */
import type { Database } from 'better-sqlite3';

export function setPragmas(raw: Database): void {
  raw.pragma('journal_mode = WAL');
  raw.pragma('synchronous = FULL');
  raw.pragma('foreign_keys = ON');
  raw.pragma('busy_timeout = 5000');
  raw.pragma('trusted_schema = OFF');
  raw.pragma('cell_size_check = ON');
  if (raw.pragma('synchronous', { simple: true }) !== 2) throw new Error('the store cannot be made durable');
  if (raw.pragma('foreign_keys', { simple: true }) !== 1) throw new Error('foreign keys are off');
}
