/** What a model demands is data: no code may know a sheet, a maker or a model by its name. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readShippedSheets } from '../../support/shippedSheets.ts';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const FOLDERS = ['domain', 'electron', 'renderer', 'db'];
const sheets = readShippedSheets();
const names = [
  ...new Set(
    sheets.flatMap((sheet) => [sheet.sheetId, ...(sheet.maker === null ? [] : [sheet.maker]), ...sheet.models]),
  ),
];

describe('code', () => {
  it('names no sheet, maker or model', () => {
    const sources = FOLDERS.flatMap((folder) => sourceFiles(join(root, folder)));
    expect(sources.length).toBeGreaterThan(50);
    const found = sources.flatMap((path) =>
      plantedNames(readFileSync(path, 'utf8')).map((name) => `${path.slice(root.length)}: ${name}`),
    );
    expect(found).toEqual([]);
  });

  it('would be caught doing so, however it is written', () => {
    const maker = sheets.find((sheet) => sheet.maker !== null)?.maker ?? '';
    expect(plantedNames(`if (sheet.maker === '${maker}') waitS = 30;`)).toContain(maker);
    expect(plantedNames(`// the ${maker.toUpperCase()} needs longer`)).toContain(maker);
    expect(plantedNames("const DEFAULT = 'general-practice-propane';")).toEqual(['general-practice-propane']);
    expect(plantedNames('const maker = sheet.maker;')).toEqual([]);
  });
});

function plantedNames(source: string): readonly string[] {
  const lower = source.toLowerCase();
  return names.filter((name) => lower.includes(name.toLowerCase()));
}

function sourceFiles(folder: string): readonly string[] {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.(ts|tsx|js|css|html|sql)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name));
}
