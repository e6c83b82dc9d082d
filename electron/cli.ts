/** Lightoff without a window. Usage: npm run demo -- --out DIR · npm run verify -- FILE · npm run restore -- [--data DIR] [NAME] */
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { findAppRoot } from './appRoot.ts';
import { defaultDataFolder } from './dataFolder.ts';
import { runDemo } from './demo/runDemo.ts';
import { fileWords } from './documents/verify/fileWords.ts';
import { verifyFile } from './documents/verify/verifyFile.ts';
import { runRestore } from './restoreCommand.ts';

const [command, ...rest] = process.argv.slice(2);

if (command === 'demo') await demo(rest);
else if (command === 'verify') verify(rest);
else if (command === 'restore') restore(rest);
else usage();

async function demo(args: readonly string[]): Promise<void> {
  const out = outFolder(args);
  if (out === null) return;
  const dataFolder = mkdtempSync(join(tmpdir(), 'lightoff-demo-'));
  try {
    const files = await runDemo({
      out,
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

/** Made before the work begins: a folder that cannot be there should not cost half a minute. */
function outFolder(args: readonly string[]): string | null {
  try {
    const { out } = parseArgs({ args: [...args], options: { out: { type: 'string' } } }).values;
    if (out === undefined) usage();
    else mkdirSync(out, { recursive: true });
    return out ?? null;
  } catch (error) {
    sayWhyNot(error);
    return null;
  }
}

function verify(args: readonly string[]): void {
  const [file] = args;
  if (file === undefined) {
    usage();
    return;
  }
  const bytes = readOrSay(file);
  if (bytes === null) return;
  const found = verifyFile(bytes);
  process.stdout.write(`${fileWords(file, found).join('\n')}\n`);
  if (!found.isIntact) process.exitCode = 1;
}

/** Without a name it only lists. */
function restore(args: readonly string[]): void {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { data: { type: 'string' }, from: { type: 'string' } },
      allowPositionals: true,
    });
    const { lines, exitCode } = runRestore({
      dataFolder: values.data ? resolve(values.data) : defaultDataFolder(process.platform, process.env, homedir()),
      appRoot: findAppRoot(import.meta.url),
      from: values.from ? resolve(values.from) : null,
      name: positionals[0] ?? null,
      now: new Date().toISOString(),
    });
    (exitCode === 0 ? process.stdout : process.stderr).write(`${lines.join('\n')}\n`);
    process.exitCode = exitCode;
  } catch (error) {
    sayWhyNot(error);
  }
}

/** Null when there is nothing to read, which is said: a name typed wrong is a slip, not a fault. */
function readOrSay(file: string): Uint8Array | null {
  try {
    return readFileSync(file);
  } catch (error) {
    sayWhyNot(error);
    return null;
  }
}

function sayWhyNot(error: unknown): void {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  usage();
}

function usage(): void {
  process.stderr.write(
    'Usage: npm run demo -- --out DIR\n       npm run verify -- FILE\n       npm run restore -- [--data DIR] [--from DIR] [NAME OF A BACKUP]\n',
  );
  process.exitCode = 2;
}
