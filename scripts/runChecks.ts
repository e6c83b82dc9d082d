/** Runs the published check values alone and prints the rows checked, per file and kind. Usage: npm run checks */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';

type Assertion = { readonly ancestorTitles: readonly string[]; readonly status: string; readonly fullName: string };
type Report = {
  readonly testResults: readonly { readonly name: string; readonly assertionResults: readonly Assertion[] }[];
};

const folder = mkdtempSync(join(tmpdir(), 'lightoff-checks-'));
const outputFile = join(folder, 'report.json');
const run = spawnSync(
  'vitest',
  ['run', '--project', 'pure', 'tests/checks', '--reporter', 'json', '--outputFile', outputFile],
  { stdio: ['ignore', 'ignore', 'inherit'] },
);
const report = JSON.parse(readFileSync(outputFile, 'utf8')) as Report;
rmSync(folder, { recursive: true });

const totals = { published: 0, computed: 0, other: 0, failed: 0 };
for (const file of report.testResults) {
  const counts = { published: 0, computed: 0, other: 0, failed: 0 };
  for (const assertion of file.assertionResults) {
    if (assertion.status !== 'passed') {
      counts.failed += 1;
      process.stdout.write(`FAILED ${assertion.fullName}\n`);
    } else counts[kindOf(assertion)] += 1;
  }
  for (const key of Object.keys(totals) as (keyof typeof totals)[]) totals[key] += counts[key];
  process.stdout.write(`${relative(process.cwd(), file.name).padEnd(58)} ${sentence(counts)}\n`);
}
process.stdout.write(`\nall files: ${sentence(totals)}\n`);
process.exit(run.status ?? 1);

function kindOf(assertion: Assertion): 'published' | 'computed' | 'other' {
  if (assertion.ancestorTitles.includes('published values (P)')) return 'published';
  return assertion.ancestorTitles.includes('computed elsewhere (C)') ? 'computed' : 'other';
}

function sentence(counts: typeof totals): string {
  return `${String(counts.published).padStart(4)} published ${String(counts.computed).padStart(4)} computed ${String(counts.other).padStart(4)} other ${String(counts.failed).padStart(3)} failed`;
}
