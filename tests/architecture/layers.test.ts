/** The layer rules hold, and would be noticed when broken: one breach per layer is planted in a scratch copy. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { APP_ROOT } from '../support/testCore.ts';

/** Layer, planted file, the line that breaks the rule. */
const BREACHES = [
  [
    'domain imports the store',
    'domain/planted.ts',
    "import { openStore } from '../db/openStore.ts';\nexport const use = openStore;\n",
  ],
  [
    'domain imports Node',
    'domain/planted.ts',
    "import { readFileSync } from 'node:fs';\nexport const use = readFileSync;\n",
  ],
  [
    'db imports the core',
    'db/planted.ts',
    "import type { Core } from '../electron/core.ts';\nexport type Use = Core;\n",
  ],
  [
    'the contract imports handlers',
    'electron/contract/planted.ts',
    "import { fail } from '../operations/handler.ts';\nexport const use = fail;\n",
  ],
  [
    'documents import the store',
    'electron/documents/planted.ts',
    "import { openStore } from '../../db/openStore.ts';\nexport const use = openStore;\n",
  ],
  [
    'operations import the shell',
    'electron/operations/planted.ts',
    "import { app } from 'electron';\nexport const use = app;\n",
  ],
  [
    'operations hold SQL',
    'electron/operations/planted.ts',
    "import { sql } from 'drizzle-orm';\nexport const use = sql;\n",
  ],
  [
    'a host imports a screen',
    'electron/planted.ts',
    "import { App } from '../renderer/App.tsx';\nexport const use = App;\n",
  ],
  [
    'a screen imports the store',
    'renderer/planted.ts',
    "import { openStore } from '../db/openStore.ts';\nexport const use = openStore;\n",
  ],
  ['a screen imports Node', 'renderer/planted.ts', "import { join } from 'node:path';\nexport const use = join;\n"],
  [
    'a screen imports a handler',
    'renderer/planted.ts',
    "import { fail } from '../electron/operations/handler.ts';\nexport const use = fail;\n",
  ],
] as const;

describe('layers', () => {
  let scratch: string;
  beforeAll(() => {
    scratch = mkdtempSync(join(tmpdir(), 'lightoff-layers-'));
    const config = JSON.parse(readFileSync(join(APP_ROOT, 'biome.json'), 'utf8')) as {
      vcs: { enabled: boolean; useIgnoreFile: boolean };
    };
    config.vcs = { enabled: false, useIgnoreFile: false };
    writeFileSync(join(scratch, 'biome.json'), JSON.stringify(config));
    cpSync(join(APP_ROOT, 'tsconfig.json'), join(scratch, 'tsconfig.json'));
    symlinkSync(join(APP_ROOT, 'node_modules'), join(scratch, 'node_modules'), 'dir');
  });
  afterAll(() => rmSync(scratch, { recursive: true, force: true }));

  it.each(BREACHES)('notices when %s', (_name, file, text) => {
    const path = join(scratch, file);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
    const run = spawnSync('biome', ['lint', file], { cwd: scratch, encoding: 'utf8' });
    rmSync(path);
    expect(run.stderr + run.stdout).toContain('noRestrictedImports');
    expect(run.status).not.toBe(0);
  });

  it('notices when domain uses what only Node or a browser has', () => {
    mkdirSync(join(scratch, 'domain'), { recursive: true });
    cpSync(join(APP_ROOT, 'domain/tsconfig.json'), join(scratch, 'domain/tsconfig.json'));
    writeFileSync(join(scratch, 'domain/planted.ts'), 'export const use = process.env;\nexport const win = window;\n');
    const run = spawnSync('tsc', ['-p', 'domain'], { cwd: scratch, encoding: 'utf8' });
    rmSync(join(scratch, 'domain'), { recursive: true });
    expect(run.stdout).toContain("'process'");
    expect(run.stdout).toContain("'window'");
    expect(run.status).not.toBe(0);
  });

  it('keeps clock and chance out of domain', () => {
    const found = sourcesUnder('domain').filter((path) =>
      /Date\.now|new Date\(\)|Temporal\.Now|Math\.random|performance\.now/.test(readFileSync(path, 'utf8')),
    );
    expect(found).toEqual([]);
  });

  it('keeps SQL in db, whoever else has the store at hand', () => {
    const found = sourcesUnder('electron').filter((path) =>
      /\.prepare\(|rawStatement|SELECT .+ FROM /.test(readFileSync(path, 'utf8')),
    );
    expect(found).toEqual([]);
  });

  it('has no silenced check anywhere', () => {
    const silenced = new RegExp(
      `${['biome', 'ignore'].join('-')}|@ts-(ignore|nocheck)|eslint-disable|as unknown as|: any(?=[;,)\\]=>|&]|$)`,
      'm',
    );
    const found = ['domain', 'db', 'electron', 'renderer', 'scripts', 'tests']
      .flatMap(sourcesUnder)
      .filter((path) => !path.endsWith('layers.test.ts') && silenced.test(readFileSync(path, 'utf8')));
    expect(found).toEqual([]);
  });
});

function sourcesUnder(folder: string): readonly string[] {
  return readdirSync(join(APP_ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join(APP_ROOT, folder, name));
}
