/**
 * Where a bug is written down: the details under a reference in the log of the data folder, the reference alone to whoever
 * asked. The log may be handed to anybody: messages that may hold what was typed, and where the folders of a person lie, are
 * left out.
 */
import { randomUUID } from 'node:crypto';
import { appendFileSync, existsSync, mkdirSync, renameSync, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** Answers the reference. Never throws: a log that cannot be written must not hide the bug. */
export type FaultLog = (error: unknown) => string;

/** Two older files stay beside the one that is written. */
const LARGEST_BYTES = 1_000_000;
const FRAMES = 20;
/** As the system, SQLite and Node name what went wrong. */
const CODE = /^[A-Z][A-Z0-9_]{1,60}$/;

export function openFaultLog(dataFolder: string, appRoot: string): FaultLog {
  return (error) => {
    const ref = randomUUID().slice(0, 8);
    const entry = `${new Date().toISOString()} fault ${ref}: ${describeFault(error, appRoot)}\n`;
    process.stderr.write(entry);
    try {
      append(faultLogPath(dataFolder), entry);
    } catch {
      // Said on stderr already.
    }
    return ref;
  };
}

export function faultLogPath(dataFolder: string): string {
  return join(dataFolder, 'log', 'faults.log');
}

/** What kind of error, where in the program; of its words only those that the language or SQLite made from names in the code. */
export function describeFault(error: unknown, appRoot: string): string {
  if (!(error instanceof Error)) return `something thrown that is no error (${typeof error})`;
  const code = 'code' in error && typeof error.code === 'string' && CODE.test(error.code) ? ` ${error.code}` : '';
  const frames = (error.stack ?? '').split('\n').filter((line) => /^\s+at /.test(line));
  const cause = error.cause === undefined ? '' : `\n  caused by ${describeFault(error.cause, appRoot)}`;
  const head = `${nameOf(error)}${code}${safeWords(error)}`;
  return `${head}\n${frames
    .slice(0, FRAMES)
    .map((line) => withoutFolders(line, appRoot))
    .join('\n')}${cause}`;
}

function nameOf(error: Error): string {
  return /^[A-Za-z]{1,60}$/.test(error.name) ? error.name : 'Error';
}

function safeWords(error: Error): string {
  if (error.name === 'SqliteError' || error.name === 'TypeError' || error.name === 'ReferenceError')
    return `: ${error.message.slice(0, 300)}`;
  if ('issues' in error && Array.isArray(error.issues)) {
    const issues = error.issues as readonly { readonly path?: readonly unknown[]; readonly code?: unknown }[];
    return `: ${issues
      .slice(0, 10)
      .map(({ path = [], code }) => `${path.map(fieldOf).join('.')} ${String(code)}`)
      .join(', ')}`;
  }
  return '';
}

/** A field of a shape; a key of a record may be anything. */
function fieldOf(key: unknown): string {
  return typeof key === 'number' || /^[a-z][A-Za-z0-9]*$/.test(String(key)) ? String(key) : '…';
}

function withoutFolders(line: string, appRoot: string): string {
  const root = appRoot.replace(/[\\/]$/, '');
  return line.replaceAll(pathToFileURL(root).href, '').replaceAll(root, '').replaceAll(homedir(), '~');
}

function append(path: string, entry: string): void {
  mkdirSync(dirname(path), { recursive: true });
  if (existsSync(path) && statSync(path).size + entry.length > LARGEST_BYTES) {
    for (const [from, to] of [
      [`${path}.1`, `${path}.2`],
      [path, `${path}.1`],
    ] as const)
      if (existsSync(from)) renameSync(from, to);
  }
  appendFileSync(path, entry);
}
