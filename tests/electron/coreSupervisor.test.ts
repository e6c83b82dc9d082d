/** The real core's process, in a worker thread, under its supervisor: it serves, is killed, comes back, and closes. */
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { findAppRoot } from '../../electron/appRoot.ts';
import { everyTopic } from '../../electron/contract/wire.ts';
import { type CoreSupervisor, superviseCore } from '../../electron/coreSupervisor.ts';
import { createPortTransport } from '../../renderer/transport/portTransport.ts';
import { state } from '../support/electronDouble.ts';
import { openWindowDouble } from '../support/openWindowDouble.ts';
import { threadFile } from '../support/threads.ts';

const appRoot = findAppRoot(import.meta.url);
const root = mkdtempSync(join(tmpdir(), 'lightoff-core-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

function supervise(dataFolder: string, onCannotOpen: (why: string) => void): CoreSupervisor {
  const coreProcessPath = fileURLToPath(threadFile('coreProcess'));
  return superviseCore({ coreProcessPath, location: { appRoot, dataFolder, startInDemo: false }, onCannotOpen });
}

const deadline = { timeout: 60_000 };

describe('superviseCore', () => {
  it('connects a window, and again after the process was killed', { timeout: 120_000 }, async () => {
    const dataFolder = join(root, 'data');
    const supervisor = supervise(dataFolder, (why) => {
      throw new Error(why);
    });
    const { contents, double } = openWindowDouble();
    const transport = createPortTransport();
    double.deliver = (channel, [port]) => {
      if (channel === 'lightoff:core-lost') transport.detach();
      else if (port !== undefined) transport.attach(port.raw);
    };
    const topics: (readonly string[])[] = [];
    transport.onChanged((changed) => topics.push(changed));
    supervisor.connect(contents, 'window-1');
    expect(await transport.call('app.status', {})).toMatchObject({ ok: true, value: { store: 'empty', dataFolder } });

    state.children.at(-1)?.kill();
    await expect.poll(() => transport.connection(), deadline).toBe('offline');
    await expect.poll(() => transport.connection(), deadline).toBe('online');
    expect(topics).toContainEqual([everyTopic]);
    expect(await transport.call('app.status', {})).toMatchObject({ ok: true, value: { store: 'empty' } });

    await supervisor.close();
    expect(existsSync(join(dataFolder, 'lightoff.db'))).toBe(true);
    // SQLite takes its write-ahead log away when the last connection is closed properly.
    expect(existsSync(join(dataFolder, 'lightoff.db-wal'))).toBe(false);
    transport.detach();
    expect(state.children).toHaveLength(2);
  });

  it('says why the store can’t be opened and does not try again', { timeout: 120_000 }, async () => {
    const occupied = join(root, 'occupied');
    writeFileSync(occupied, 'a file where the data folder should be');
    const reasons: string[] = [];
    const supervisor = supervise(occupied, (why) => reasons.push(why));
    await expect.poll(() => reasons.length, deadline).toBe(1);
    expect(reasons[0]).toMatch(/EEXIST|ENOTDIR/);
    const childCount = state.children.length;
    await supervisor.close();
    expect(state.children).toHaveLength(childCount);
  });
});
