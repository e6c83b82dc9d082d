/** Lightoff without a window. Usage: npm run demo -- --out DIR · npm run verify -- FILE */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { findAppRoot } from './appRoot.ts';
import { runDemo } from './demo/runDemo.ts';
import { verifyFile } from './documents/verify/verifyFile.ts';

const [command, ...rest] = process.argv.slice(2);

if (command === 'demo') await demo(rest);
else if (command === 'verify') verify(rest);
else usage();

async function demo(args: readonly string[]): Promise<void> {
  const { values } = parseArgs({ args: [...args], options: { out: { type: 'string' } } });
  if (values.out === undefined) {
    usage();
    return;
  }
  const dataFolder = mkdtempSync(join(tmpdir(), 'lightoff-demo-'));
  try {
    const files = await runDemo({
      out: values.out,
      dataFolder,
      appRoot: findAppRoot(import.meta.url),
      now: new Date().toISOString(),
    });
    process.stdout.write(
      `packet  ${files.packet}\nrecord  ${files.record}\nzip     ${files.zip}\nfingerprint ${files.sha256}\n`,
    );
  } finally {
    rmSync(dataFolder, { recursive: true, force: true });
  }
}

function verify(args: readonly string[]): void {
  const [file] = args;
  if (file === undefined) {
    usage();
    return;
  }
  const found = verifyFile(readFileSync(file));
  process.stdout.write(`${file}: ${found.kind}\n`);
  if (found.sha256 !== null) process.stdout.write(`fingerprint ${found.sha256}\n`);
  if (!found.isSealed && found.sha256 !== null) process.stdout.write('a draft: this record was never sealed\n');
  for (const problem of found.problems)
    process.stdout.write(`problem: ${[problem.code, problem.detail].filter(Boolean).join(': ')}\n`);
  process.stdout.write(
    found.isIntact
      ? 'nothing in the file contradicts anything else in it; compare the fingerprint with the printed one\n'
      : 'NOT intact\n',
  );
  if (!found.isIntact) process.exitCode = 1;
}

function usage(): void {
  process.stderr.write('Usage: npm run demo -- --out DIR\n       npm run verify -- FILE\n');
  process.exitCode = 2;
}
