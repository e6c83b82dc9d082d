/** A spreadsheet (LibreOffice) told to work formulas out runs none of ours; the same cells unguarded show that it would. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { csvFile, csvText } from '../../../electron/documents/csvCell.ts';
import { hasTool, runTool } from '../../support/systemTools.ts';

// Another program starts up.
vi.setConfig({ testTimeout: 120_000 });

const folder = mkdtempSync(join(tmpdir(), 'spreadsheet-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** OWASP's list of what begins a formula, from memory, with blanks, quotes and full-width forms before them. */
const HOSTILE = [
  '=1+1',
  '+1+1',
  '-1+1',
  '@SUM(1)',
  '\t=1+1',
  '\r=1+1',
  ' =1+1',
  '＝1+1',
  '"=1+1',
  '=HYPERLINK("x";"y")',
];

/** Field separator, quote, UTF-8, first row; the last one: work formulas out. */
const OPEN_WITH_FORMULAS = 'CSV:44,34,76,1,,0,false,true,false,false,false,0,true';

function formulasIn(name: string, csv: string): number {
  writeFileSync(join(folder, `${name}.csv`), csv);
  const profile = `-env:UserInstallation=${pathToFileURL(join(folder, 'profile')).href}`;
  const convert = ['--convert-to', 'fods', '--outdir', folder, `--infilter=${OPEN_WITH_FORMULAS}`];
  runTool('soffice', [profile, '--headless', ...convert, join(folder, `${name}.csv`)]);
  return readFileSync(join(folder, `${name}.fods`), 'utf8').match(/table:formula=/gu)?.length ?? 0;
}

describe.skipIf(!hasTool('soffice'))('our CSV in a spreadsheet', () => {
  it('runs nothing, where the same cells as they are would run', () => {
    expect(formulasIn('guarded', csvFile(HOSTILE.map((text) => [csvText(text)])))).toBe(0);
    expect(formulasIn('unguarded', csvFile([['=1+1'], ['=2+2']]))).toBe(2);
  });
});
