import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseLaunchOptions, pickShellOptions } from '../../electron/launchOptions.ts';

describe('parseLaunchOptions', () => {
  it('reads every flag, and nothing said means the usual', () => {
    expect(parseLaunchOptions([])).toEqual({
      ok: true,
      value: { port: null, dataFolder: null, inBrowser: false, startInDemo: false, fetchElectron: false, help: false },
    });
    expect(parseLaunchOptions(['--port', '8080', '--data', 'here', '--browser', '--demo', '--fetch-electron'])).toEqual(
      {
        ok: true,
        value: {
          port: 8080,
          dataFolder: resolve('here'),
          inBrowser: true,
          startInDemo: true,
          fetchElectron: true,
          help: false,
        },
      },
    );
  });

  it.each(['-1', '65536', '80a', '', '1e3', '0x50'])('refuses the port %j', (port) => {
    expect(parseLaunchOptions([`--port=${port}`])).toEqual({ ok: false, error: { code: 'bad-port', given: port } });
  });

  it.each([[['--prot', '80']], [['extra']], [['--data']], [['--demo=yes']]])('refuses %j', (args) => {
    expect(parseLaunchOptions(args)).toMatchObject({ ok: false, error: { code: 'bad-flag' } });
  });
});

describe('pickShellOptions', () => {
  it('takes its own from among the runtime’s switches', () => {
    const args = ['.', '--ozone-platform=wayland', '--demo', '--data=/mnt/store', '--enable-logging'];
    expect(pickShellOptions(args)).toEqual({ dataFolder: resolve('/mnt/store'), startInDemo: true });
    expect(pickShellOptions(['--data'])).toEqual({ dataFolder: null, startInDemo: false });
  });
});
