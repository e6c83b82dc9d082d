import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { findAppRoot } from '../../electron/appRoot.ts';

const root = mkdtempSync(join(tmpdir(), 'lightoff-root-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

describe('findAppRoot', () => {
  it('finds the folder above sources and above bundles, past packages of other names', () => {
    writeFileSync(join(root, 'package.json'), '{"name":"lightoff"}');
    for (const folder of ['electron', 'out/shell', 'node_modules/other/lib'])
      mkdirSync(join(root, folder), { recursive: true });
    writeFileSync(join(root, 'node_modules/other/package.json'), '{"name":"other"}');
    writeFileSync(join(root, 'out/package.json'), 'not JSON');
    for (const module of ['electron/appRoot.ts', 'out/shell/main.js', 'node_modules/other/lib/x.js']) {
      expect(findAppRoot(pathToFileURL(join(root, module)).href)).toBe(root);
    }
  });

  it('says so when there is none', () => {
    expect(() => findAppRoot(pathToFileURL(join(tmpdir(), 'nowhere', 'x.js')).href)).toThrow(
      'no package.json of lightoff',
    );
  });
});
