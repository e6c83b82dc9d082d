/** The packaged app as far as it goes without the runtime: what is in the archive, its fuses, and a core that runs from it alone. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { FuseState, FuseV1Options, getCurrentFuseWire } from '@electron/fuses';
import { build, Platform } from 'electron-builder';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findAppRoot } from '../../electron/appRoot.ts';
import { superviseCore } from '../../electron/coreSupervisor.ts';
import { createPortTransport } from '../../renderer/transport/portTransport.ts';
import { isBuildNeeded } from '../../scripts/buildCheck.ts';
import { extractAsar } from '../support/extractAsar.ts';
import { makeFakeElectron } from '../support/fakeElectronFolder.ts';
import { COMPANY, PIN } from '../support/officeScenario.ts';
import { openWindowDouble } from '../support/openWindowDouble.ts';

const appRoot = findAppRoot(import.meta.url);
const root = mkdtempSync(join(tmpdir(), 'lightoff-package-'));
const unpacked = join(root, 'package', 'linux-unpacked');
const extracted = join(root, 'extracted');
let paths: readonly string[];

beforeAll(async () => {
  if (isBuildNeeded(appRoot)) {
    const built = spawnSync(process.execPath, [join(appRoot, 'scripts', 'build.ts')], {
      env: { ...process.env, NODE_ENV: 'production' },
    });
    if (built.status !== 0) throw new Error(built.stderr.toString());
  }
  const { devDependencies } = JSON.parse(readFileSync(join(appRoot, 'package.json'), 'utf8'));
  makeFakeElectron(join(root, 'runtime'), devDependencies.electron);
  await build({
    projectDir: appRoot,
    targets: Platform.LINUX.createTarget('dir'),
    publish: 'never',
    config: {
      ...JSON.parse(readFileSync(join(appRoot, 'electron-builder.json'), 'utf8')),
      electronDist: join(root, 'runtime'),
      directories: { output: join(root, 'package') },
    },
  });
  paths = extractAsar(join(unpacked, 'resources', 'app.asar'), extracted);
}, 300_000);

afterAll(() => rmSync(root, { recursive: true, force: true }));

describe('the packaged app', () => {
  it('holds page, shell, migrations and sheets', () => {
    expect(paths).toEqual(
      expect.arrayContaining([
        'package.json',
        'out/renderer/index.html',
        'out/shell/main.js',
        'out/shell/preload.cjs',
        'out/shell/coreProcess.js',
        'db/migrations/0000_start.sql',
        'node_modules/source-sans/TTF/SourceSans3-Regular.ttf',
      ]),
    );
    expect(paths.filter((path) => path.startsWith('assets/sheets/')).length).toBeGreaterThan(0);
  });

  it('holds no source, no test, and only the native code of its own system', () => {
    // What the app's own packages ship of theirs is not ours to judge.
    expect(paths.filter((path) => /\.tsx?$/.test(path) && !path.startsWith('node_modules/'))).toEqual([]);
    expect(paths.filter((path) => /^(tests|scripts|renderer|electron|domain)\//.test(path))).toEqual([]);
    const native = paths.filter((path) => path.endsWith('.node'));
    expect(native).toEqual([`node_modules/better-sqlite3/prebuilds/linux-${process.arch}.node`]);
  });

  it('has its fuses blown', async () => {
    const wire = await getCurrentFuseWire(join(unpacked, 'lightoff'));
    const off = [
      FuseV1Options.RunAsNode,
      FuseV1Options.EnableNodeOptionsEnvironmentVariable,
      FuseV1Options.EnableNodeCliInspectArguments,
      FuseV1Options.GrantFileProtocolExtraPrivileges,
    ];
    const on = [
      FuseV1Options.EnableCookieEncryption,
      FuseV1Options.EnableEmbeddedAsarIntegrityValidation,
      FuseV1Options.OnlyLoadAppFromAsar,
    ];
    expect(off.map((fuse) => wire[fuse])).toEqual(off.map(() => FuseState.DISABLE));
    expect(on.map((fuse) => wire[fuse])).toEqual(on.map(() => FuseState.ENABLE));
  });

  it('runs its core from what it holds, demo included', { timeout: 240_000 }, async () => {
    const supervisor = superviseCore({
      coreProcessPath: join(extracted, 'out', 'shell', 'coreProcess.js'),
      location: { appRoot: extracted, dataFolder: join(root, 'data'), startInDemo: false },
      onCannotOpen: (why) => {
        throw new Error(why);
      },
    });
    const { contents, double } = openWindowDouble();
    const transport = createPortTransport();
    double.deliver = (_channel, [port]) => {
      if (port !== undefined) transport.attach(port.raw);
    };
    supervisor.connect(contents, 'window-1');
    const people = [{ name: 'Maren Oduya', initials: 'MO', roles: ['owner'], pin: PIN }];
    expect(await transport.call('app.completeFirstRun', { company: COMPANY, people })).toMatchObject({ ok: true });
    expect(await transport.call('app.openDemo', {})).toMatchObject({ ok: true });
    expect(await transport.call('app.status', {})).toMatchObject({ ok: true, value: { isDemo: true } });
    await supervisor.close();
    transport.detach();
  });
});
