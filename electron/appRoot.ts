/** The folder that holds package.json, assets and out/: found by walking up, since the code runs from its sources and from out/. */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export function findAppRoot(moduleUrl: string): string {
  let folder = dirname(fileURLToPath(moduleUrl));
  while (!isAppRoot(folder)) {
    const parent = dirname(folder);
    if (parent === folder) throw new Error(`no package.json of lightoff above ${fileURLToPath(moduleUrl)}`);
    folder = parent;
  }
  return folder;
}

function isAppRoot(folder: string): boolean {
  try {
    const parsed: unknown = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    return typeof parsed === 'object' && parsed !== null && 'name' in parsed && parsed.name === 'lightoff';
  } catch {
    return false;
  }
}
