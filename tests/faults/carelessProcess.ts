/** A store that does not sync each commit: what the power cut is to catch, so that it is known to catch something. */
import Database from 'better-sqlite3';

const [path] = process.argv.slice(2);
if (path === undefined) throw new Error('a path is needed');
const raw = new Database(path);
raw.pragma('journal_mode = WAL');
raw.pragma('synchronous = NORMAL');
raw.exec('CREATE TABLE IF NOT EXISTS readings (id INTEGER PRIMARY KEY, text TEXT NOT NULL)');
raw.pragma('wal_checkpoint(TRUNCATE)');
const insert = raw.prepare('INSERT INTO readings (text) VALUES (?)');
for (let count = 1; ; count += 1) {
  const { lastInsertRowid } = insert.run(String(count));
  process.stdout.write(`saved ${lastInsertRowid}\n`);
  await new Promise((resolve) => setTimeout(resolve, 1));
}
