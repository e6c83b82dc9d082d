/** The command line as somebody types it, slips included. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { APP_ROOT } from '../support/testCore.ts';

const folder = mkdtempSync(join(tmpdir(), 'lightoff-cli-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(...args: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(APP_ROOT, 'electron', 'cli.ts'), ...args], {
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}

const aText = join(folder, 'a.txt');
writeFileSync(aText, 'a shopping list');

describe('a slip on the command line', () => {
  it.each([
    ['no command', []],
    ['an unknown command', ['verfy', 'x.pdf']],
    ['no file', ['verify']],
    ['a file that is not there', ['verify', join(folder, 'packet.pdf')]],
    ['a folder instead of a file', ['verify', folder]],
    ['no folder to write to', ['demo']],
    ['an option misspelt', ['demo', '--oot', folder]],
    ['a file where the folder should be', ['demo', '--out', aText]],
  ])('%s: says how it is meant, without a trace of the program', (_, args) => {
    const { status, stdout, stderr } = run(...args);
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toContain('Usage: npm run demo -- --out DIR');
    expect(stderr).not.toMatch(/^\s+at /m);
  });
});

describe('npm run verify', () => {
  it('says in words that a file is none of ours', () => {
    const { status, stdout } = run('verify', aText);
    expect(status).toBe(1);
    expect(stdout.split('\n').slice(0, 3)).toEqual([
      `${aText}: no packet, record or ZIP of Lightoff`,
      'Problem: It is neither PDF, JSON nor ZIP.',
      'NOT intact: do not rely on it.',
    ]);
  });
});
