import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readPageFile } from '../../electron/pageFile.ts';
import { hostilePaths } from '../support/hostilePaths.ts';
import { makePageFolder } from '../support/pageFolder.ts';

let page: ReturnType<typeof makePageFolder>;
beforeAll(() => {
  page = makePageFolder();
});
afterAll(() => page.remove());

describe('readPageFile', () => {
  it('gives the page for the root and a built file by its name', async () => {
    const root = await readPageFile(page.folder, '/');
    expect(root?.mediaType).toBe('text/html; charset=utf-8');
    expect(Buffer.from(root?.bytes ?? []).toString()).toContain('<title>page</title>');
    expect((await readPageFile(page.folder, '/assets/index-aB3_x.js'))?.mediaType).toBe(
      'text/javascript; charset=utf-8',
    );
  });

  it('has at least thirty ways out to refuse', () => {
    expect(new Set(hostilePaths).size).toBeGreaterThanOrEqual(30);
  });

  it.each(hostilePaths)('refuses %j', async (path) => {
    expect(await readPageFile(page.folder, path)).toBeNull();
  });

  it.each(['/missing.html', '/assets', '/assets/', '', 'index.html', '/index.exe'])(
    'has nothing for %j',
    async (path) => {
      expect(await readPageFile(page.folder, path)).toBeNull();
    },
  );
});
