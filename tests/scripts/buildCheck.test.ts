import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { isBuildNeeded } from '../../scripts/buildCheck.ts';

const root = mkdtempSync(join(tmpdir(), 'lightoff-build-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

function write(path: string, atS: number): void {
  writeFileSync(join(root, path), '');
  utimesSync(join(root, path), atS, atS);
}

function dateFolder(path: string, atS: number): void {
  utimesSync(join(root, path), atS, atS);
}

beforeEach(() => {
  for (const folder of ['renderer/screens', 'electron', 'tests', 'out'])
    mkdirSync(join(root, folder), { recursive: true });
  write('renderer/screens/Week.tsx', 1_000);
  write('electron/main.ts', 1_000);
  for (const folder of ['renderer/screens', 'renderer', 'electron']) dateFolder(folder, 1_000);
  write('out/built.txt', 2_000);
});

describe('isBuildNeeded', () => {
  it('is false when the build is newer than every source', () => {
    expect(isBuildNeeded(root)).toBe(false);
    write('tests/any.test.ts', 3_000);
    expect(isBuildNeeded(root)).toBe(false);
  });

  it('is true when nothing is built yet', () => {
    rmSync(join(root, 'out', 'built.txt'));
    expect(isBuildNeeded(root)).toBe(true);
  });

  it('is true after a source changed, came or went', () => {
    write('renderer/screens/Week.tsx', 3_000);
    expect(isBuildNeeded(root)).toBe(true);
    write('renderer/screens/Week.tsx', 1_000);
    dateFolder('renderer/screens', 3_000);
    expect(isBuildNeeded(root)).toBe(true);
  });
});
