import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { findAppRoot } from '../../electron/appRoot.ts';

const appRoot = findAppRoot(import.meta.url);
const readJson = (name: string) => JSON.parse(readFileSync(join(appRoot, name), 'utf8'));

describe('the packaging config', () => {
  const config = readJson('electron-builder.json');

  it('blows every fuse that would turn the shell into a plain runtime', () => {
    expect(config.electronFuses).toEqual({
      runAsNode: false,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableCookieEncryption: true,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      grantFileProtocolExtraPrivileges: false,
    });
  });

  it('packs into an archive, with native code beside it', () => {
    expect(config.asar).toBe(true);
    expect(config.asarUnpack).toEqual(['**/*.node']);
  });

  it('packs no sources and no tests', () => {
    const packed = config.files.filter((pattern: string) => !pattern.startsWith('!'));
    expect(packed).toEqual(['package.json', 'out/renderer/**', 'out/shell/**', 'assets/**', 'db/migrations/*.sql']);
  });
});

describe('the runtime', () => {
  it('is pinned to one exact version of the three majors that are supported', () => {
    const { devDependencies } = readJson('package.json');
    expect(devDependencies.electron).toMatch(/^\d+\.\d+\.\d+$/);
    // electronjs.org/docs/latest/tutorial/electron-timelines: the latest three majors get fixes; 45 was the newest when this was written.
    expect(Number(devDependencies.electron.split('.')[0])).toBeGreaterThanOrEqual(45);
  });
});
