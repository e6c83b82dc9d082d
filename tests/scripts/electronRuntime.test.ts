import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { chooseShell, findElectron } from '../../scripts/electronRuntime.ts';

const root = mkdtempSync(join(tmpdir(), 'lightoff-runtime-'));
const withRuntime = join(root, 'with');
const without = join(root, 'without');
const binary = join(withRuntime, 'node_modules', 'electron', 'dist', 'electron');

beforeAll(() => {
  mkdirSync(join(withRuntime, 'node_modules', 'electron', 'dist'), { recursive: true });
  writeFileSync(join(withRuntime, 'node_modules', 'electron', 'path.txt'), 'electron\n');
  writeFileSync(binary, '');
  mkdirSync(join(without, 'node_modules', 'electron'), { recursive: true });
  // What a fresh install leaves: a package that would download when required.
  writeFileSync(join(without, 'node_modules', 'electron', 'index.js'), 'throw new Error("must not be required")');
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

describe('findElectron', () => {
  it('finds the binary by the files alone, and misses it in peace', () => {
    expect(findElectron(withRuntime, {})).toBe(binary);
    expect(findElectron(without, {})).toBeNull();
    expect(findElectron(withRuntime, { ELECTRON_OVERRIDE_DIST_PATH: join(root, 'elsewhere') })).toBeNull();
  });
});

describe('chooseShell', () => {
  const desktop = { platform: 'linux', environment: { DISPLAY: ':0' }, userNumber: 1000 } as const;

  it('takes the desktop shell where it can show a window', () => {
    expect(chooseShell(withRuntime, desktop)).toEqual({ ok: true, value: binary });
    expect(chooseShell(withRuntime, { ...desktop, environment: { WAYLAND_DISPLAY: 'wayland-0' } })).toMatchObject({
      ok: true,
    });
    expect(chooseShell(withRuntime, { platform: 'win32', environment: {}, userNumber: null })).toMatchObject({
      ok: true,
    });
  });

  it('says why there will be no window', () => {
    expect(chooseShell(without, desktop)).toEqual({ ok: false, error: 'no-runtime' });
    expect(chooseShell(withRuntime, { ...desktop, environment: {} })).toEqual({ ok: false, error: 'no-display' });
    expect(chooseShell(withRuntime, { ...desktop, userNumber: 0 })).toEqual({ ok: false, error: 'runs-as-root' });
  });
});
