/** The code on the page, drawn by another program (poppler) and read by another one (ZXing), is the fingerprint that `verify` finds in the file. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { packetPdf } from '../../../electron/documents/packet/packetPdf.ts';
import { verifyFile } from '../../../electron/documents/verify/verifyFile.ts';
import { sampleDraft, samplePacket } from '../../support/packetSample.ts';
import { hasTool, runTool } from '../../support/systemTools.ts';

// Whole documents on a machine that is busy with other tests.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const folder = mkdtempSync(join(tmpdir(), 'packet-qr-'));
beforeAll(() => {
  const wasmFile = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
  prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(readFileSync(wasmFile)).buffer } });
});
afterAll(() => rmSync(folder, { recursive: true }));

async function codesOnFirstPage(pdf: Uint8Array, dotsPerInch: number): Promise<readonly string[]> {
  const file = join(folder, 'packet.pdf');
  writeFileSync(file, pdf);
  runTool('pdftoppm', [
    '-png',
    '-r',
    String(dotsPerInch),
    '-f',
    '1',
    '-l',
    '1',
    '-singlefile',
    file,
    join(folder, 'page'),
  ]);
  const picture = new Uint8Array(readFileSync(join(folder, 'page.png')));
  return (await readBarcodes(picture, { formats: ['QRCode'] })).map(({ text }) => text);
}

describe.skipIf(!hasTool('pdftoppm'))('the code on the page', () => {
  it.each([
    ['a final packet, as printed', samplePacket, 300],
    ['a final packet, as a fax would send it', samplePacket, 100],
    ['a draft', sampleDraft, 150],
  ])('of %s is the fingerprint that is found in the file', async (_what, sample, dotsPerInch) => {
    const pdf = await packetPdf(sample());
    const { sha256, isIntact } = verifyFile(pdf);
    expect(isIntact).toBe(true);
    expect(sha256).toMatch(/^[0-9a-f]{64}$/);
    expect(await codesOnFirstPage(pdf, dotsPerInch)).toEqual([`SHA256:${sha256?.toUpperCase()}`]);
  });
});
