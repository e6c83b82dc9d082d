/** Writes the next migration from the schema and makes its tables STRICT, which drizzle-kit cannot say. Usage: npm run db:generate -- --name words */
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';

const folder = 'db/migrations';
const before = new Set(readdirSync(folder));
const made = spawnSync('drizzle-kit', ['generate', ...process.argv.slice(2)], { stdio: 'inherit' });
if (made.status !== 0) process.exit(made.status ?? 1);
for (const name of readdirSync(folder)) {
  if (!name.endsWith('.sql') || before.has(name)) continue;
  const path = `${folder}/${name}`;
  writeFileSync(path, readFileSync(path, 'utf8').replaceAll(/^\)\s*;/gm, ') STRICT;'));
}
