/** A folder of page files in a temporary place, with a secret beside it and links that lead to it. */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export const secret = 'not for the page';

export function makePageFolder(): { readonly folder: string; readonly remove: () => void } {
  const root = mkdtempSync(join(tmpdir(), 'lightoff-page-'));
  const folder = join(root, 'renderer');
  mkdirSync(join(folder, 'assets'), { recursive: true });
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>page</title>');
  writeFileSync(join(folder, 'assets', 'index-aB3_x.js'), 'export {};');
  for (const path of ['secret.txt', 'renderer/.hidden.txt', 'renderer/assets/.hidden.txt', 'renderer/con.txt']) {
    writeFileSync(join(root, path), secret);
  }
  symlinkSync(root, join(folder, 'link'));
  symlinkSync(join(root, 'secret.txt'), join(folder, 'secret-link.txt'));
  return { folder, remove: () => rmSync(root, { recursive: true, force: true }) };
}
