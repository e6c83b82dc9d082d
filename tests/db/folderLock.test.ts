/** One program at a time per data folder, whatever becomes of the first. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { FolderInUse, takeFolderLock } from '../../db/folderLock.ts';
import { createCore } from '../../electron/createCore.ts';
import { APP_ROOT } from '../support/testCore.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lightoff-lock-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('the lock on a data folder', () => {
  it('is refused to a second core, by the folder’s name, and free once the first is closed', () => {
    const first = createCore({ appRoot: APP_ROOT, dataFolder: folder });
    expect(() => createCore({ appRoot: APP_ROOT, dataFolder: folder })).toThrow(FolderInUse);
    expect(() => createCore({ appRoot: APP_ROOT, dataFolder: folder })).toThrow(folder);
    first.close();
    createCore({ appRoot: APP_ROOT, dataFolder: folder }).close();
  });

  it('is free again when its holder is killed', async () => {
    const script = `const { takeFolderLock } = await import(${JSON.stringify(join(APP_ROOT, 'db/folderLock.ts'))});
      globalThis.held = takeFolderLock(${JSON.stringify(folder)}); console.log('held'); setInterval(() => undefined, 1000);`;
    const holder = spawn(process.execPath, ['--input-type=module', '-e', script], {
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    try {
      await once(holder.stdout, 'data');
      expect(() => takeFolderLock(folder)).toThrow(FolderInUse);
    } finally {
      holder.kill('SIGKILL');
      await once(holder, 'exit');
    }
    takeFolderLock(folder).release();
  });
});
