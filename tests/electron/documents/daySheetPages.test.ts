/** A day sheet over several pages, read back as printed: each visit on one page, its heading with it. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it, vi } from 'vitest';
import { blocksPdf } from '../../../electron/documents/blocksPdf.ts';
import { type DaySheetStop, daySheetBlocks } from '../../../electron/documents/daySheet/daySheetBlocks.ts';
import { readPdf } from '../../support/readPdf.ts';
import { hasTool, runTool } from '../../support/systemTools.ts';

vi.setConfig({ testTimeout: 60_000 });

const folder = mkdtempSync(join(tmpdir(), 'day-sheet-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** `first 3` … `last 3` stand in its heading and its last line; between them as much as it is given. */
function stop(number: number, gaps: number): DaySheetStop {
  return {
    fromMin: 480,
    toMin: 540,
    wayMin: 12,
    promised: null,
    state: 'planned',
    customerName: `first-${number}.`,
    phone: null,
    address: '9 Fathom Street, Graven Bay',
    access: 'side door',
    crew: [],
    note: null,
    jobs: [
      {
        kind: 'Startup',
        appliance: 'Invented maker T 24',
        serial: 'TK-1',
        fuel: 'natural gas',
        inputKw: 24,
        sheet: null,
        parts: [`last-${number}`],
        readinessGaps: Array.from({ length: gaps }, (_, index) => `gap ${index}`),
        readinessAged: [],
        makeSafes: [],
      },
    ],
  };
}

async function pdfOf(stops: readonly DaySheetStop[]): Promise<Uint8Array> {
  const sheet = { companyName: 'Kittiwake Heating', technicianName: 'Tobias Reyle', dayText: 'Friday', homeMin: null };
  return blocksPdf({
    blocks: daySheetBlocks({ ...sheet, stops }),
    images: new Map(),
    title: 'Day sheet',
    author: 'Kittiwake Heating',
    language: 'en',
    country: 'CA',
    madeAt: '2026-03-06T08:00:00Z',
    footer: null,
  });
}

function expectWhole(pages: readonly string[], count: number): void {
  expect(pages.length).toBeGreaterThan(2);
  const pageOf = (words: string): number => pages.findIndex((page) => page.includes(words));
  for (let number = 1; number <= count; number += 1) {
    expect(pageOf(`first-${number}.`), `visit ${number}`).toBeGreaterThanOrEqual(0);
    expect(pageOf(`last-${number}.`), `visit ${number}`).toBe(pageOf(`first-${number}.`));
  }
}

it('keeps each visit on one page, however the others fall', async () => {
  for (const more of [0, 1, 2, 3]) {
    const stops = Array.from({ length: 12 }, (_, index) => stop(index + 1, more + (index % 5)));
    expectWhole((await readPdf(await pdfOf(stops))).pages, 12);
  }
});

it.skipIf(!hasTool('pdftotext'))('does so for another reader as well (pdftotext)', async () => {
  const stops = Array.from({ length: 12 }, (_, index) => stop(index + 1, index % 4));
  writeFileSync(join(folder, 'day.pdf'), await pdfOf(stops));
  expectWhole(runTool('pdftotext', ['-layout', join(folder, 'day.pdf'), '-']).split('\f'), 12);
});

it('lets a visit that is taller than a page break, its heading with what follows', async () => {
  const { pages } = await readPdf(await pdfOf([stop(1, 3), stop(2, 90)]));
  expect(pages.length).toBeGreaterThan(1);
  const at = pages.findIndex((page) => page.includes('first-2.'));
  expect(pages[at]).toContain('Getting in');
});

it('says of an answer of long ago how old it is and what to do, and nothing where none is', () => {
  const sheet = { companyName: 'Kittiwake Heating', technicianName: 'Tobias Reyle', dayText: 'Friday', homeMin: null };
  const [job] = stop(1, 0).jobs;
  if (job === undefined) throw new Error('a job expected');
  const withAged = (readinessAged: readonly string[]) =>
    JSON.stringify(daySheetBlocks({ ...sheet, stops: [{ ...stop(1, 0), jobs: [{ ...job, readinessAged }] }] }));
  expect(withAged(['Gas live: asked 34 days ago'])).toContain('ask again before setting out');
  expect(withAged(['Gas live: asked 34 days ago'])).toContain('Gas live: asked 34 days ago');
  expect(withAged([])).not.toContain('ask again');
});
