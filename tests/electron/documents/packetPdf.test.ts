import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { VERDICTS } from '../../../domain/judgement/finding.ts';
import { hasGlyph } from '../../../electron/documents/documentFonts.ts';
import { NO_GLYPH } from '../../../electron/documents/drawableText.ts';
import { fingerprintGroups } from '../../../electron/documents/packet/fingerprint.ts';
import type { PacketInput } from '../../../electron/documents/packet/packetInput.ts';
import { packetPages, packetPdf } from '../../../electron/documents/packet/packetPdf.ts';
import { VERDICT_WORDS } from '../../../electron/documents/packet/packetWords.ts';
import type { TextOp } from '../../../electron/documents/page/pageModel.ts';
import { buildSealedRecord } from '../../../electron/sealing/buildSealedRecord.ts';
import { canonicalJson, sealHash } from '../../../electron/sealing/canonicalJson.ts';
import { sampleDraft, samplePacket } from '../../support/packetSample.ts';
import { type ReadPdf, readPdf } from '../../support/readPdf.ts';
import { sampleFindings, sampleRecordInput, sampleSalts, sampleSeal, sampleStop } from '../../support/recordSample.ts';
import { hasTool, runTool } from '../../support/systemTools.ts';

// Whole documents and chains on a machine that is busy with other tests.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const folder = mkdtempSync(join(tmpdir(), 'packet-'));
const finalInput = samplePacket();
const draftInput = sampleDraft();
let finalPdf: Uint8Array = new Uint8Array();
let draftPdf: Uint8Array = new Uint8Array();
let finalRead: ReadPdf;
let draftRead: ReadPdf;

beforeAll(async () => {
  finalPdf = await packetPdf(finalInput);
  draftPdf = await packetPdf(draftInput);
  writeFileSync(join(folder, 'final.pdf'), finalPdf);
  writeFileSync(join(folder, 'draft.pdf'), draftPdf);
  finalRead = await readPdf(finalPdf);
  draftRead = await readPdf(draftPdf);
});
afterAll(() => rmSync(folder, { recursive: true }));

function textOps(input: PacketInput): readonly TextOp[] {
  return packetPages(input).model.pages.flatMap((page) =>
    [...page.body.map(({ op }) => op), ...page.chrome].filter((op) => op.kind === 'text'),
  );
}

describe('the packet, as another reader sees it', () => {
  it('gives its text back with all accents', () => {
    // Micro sign and Greek mu are one glyph: which of the two comes back is the reader's choice.
    const text = finalRead.pages.join(' ').replaceAll('\u03bc', 'µ');
    for (const name of ['Åse Ærøskøbing-Łukaszewicz', 'Łukasz Brzęczyszczykiewicz', 'O₂', '°F', 'µS/cm', '±']) {
      expect(text.includes(name), name).toBe(true);
    }
  });

  it('has a title, a language, tags and both files inside', () => {
    expect(finalRead).toMatchObject({
      title: 'Startup record and registration packet, Tarnbeck TB 28, serial TB28-26-004417',
      language: 'en',
      isMarked: true,
      attachments: ['disclosures.json', 'record.json'],
      figuresWithoutAlt: 0,
    });
  });

  it('is tagged as headings, tables with heads, lists and figures', () => {
    const roles = finalRead.roles;
    expect(roles.get('H1')).toBe(1);
    for (const role of ['Sect', 'H2', 'H3', 'P', 'Table', 'TR', 'TH', 'TD', 'L', 'LI', 'Figure']) {
      expect(roles.get(role) ?? 0, role).toBeGreaterThan(0);
    }
  });

  it('numbers every page and names the record on it', () => {
    const id = sealHash(canonicalJson(finalInput.record)).slice(0, 16);
    for (const [index, page] of finalRead.pages.entries()) {
      expect(page).toContain(`Page ${index + 1} of ${finalRead.pages.length}`);
      expect(page).toContain(id);
    }
  });

  it('says DRAFT on every page of a draft and on none of a final packet', () => {
    expect(draftRead.pages.every((page) => page.includes('DRAFT'))).toBe(true);
    expect(finalRead.pages.some((page) => page.includes('DRAFT'))).toBe(false);
  });

  it('treats a record that is not sealed as a draft, whatever it is told', async () => {
    const read = await readPdf(await packetPdf({ ...draftInput, isDraft: false }));
    expect(read.pages.every((page) => page.includes('DRAFT'))).toBe(true);
  });

  it('prints the fingerprint of the record it holds', () => {
    const groups = fingerprintGroups(sealHash(canonicalJson(finalInput.record))).join(' ');
    expect(finalRead.pages[0]).toContain(groups);
    expect(finalRead.pages.slice(1).join(' ')).toContain(groups);
  });

  it('states the last day with its weekday and how it came about', () => {
    expect(finalRead.pages.join(' ')).toContain(
      'Last day to register: Saturday 13 June 2026. That is 60 days from the startup, 14 April 2026.',
    );
  });

  it('shows both units where they differ', () => {
    const text = finalRead.pages.join(' ').replaceAll('\u00a0', ' ');
    expect(text).toMatch(/142\.5.*61\.4 °C/u);
    expect(text).toContain('5299 ft (1615 m)');
    expect(text).toContain('148 L');
  });

  it('shows one unit system alone when asked to', async () => {
    const read = await readPdf(await packetPdf({ ...finalInput, showsBothUnits: false }));
    const text = read.pages.join(' ').replaceAll('\u00a0', ' ');
    expect([text.includes('138.0'), text.includes('58.9 °C')]).toEqual([true, false]);
  });

  it('tells the maker what was agreed about the registration, and nothing of what was said to offers', () => {
    const text = finalRead.pages.join(' ');
    expect(text).toMatch(/agreed on 14 April 2026 to being written to about the registration/u);
    expect(text).not.toMatch(/about (offers|services that fall due)/u);
  });

  it('lists what is not evidenced, with the reason for making it all the same', async () => {
    const gaps = draftInput.gaps;
    const read = await readPdf(
      await packetPdf({ ...finalInput, gaps, gapReason: 'Supplier’s plate photo follows by post' }),
    );
    const text = read.pages.join(' ');
    expect(text).toContain('Photo: vent termination');
    // Said in front, and in full near the end.
    expect(read.pages[0]).toContain('Not complete');
    expect(text.match(/Supplier’s plate photo follows by post/gu)).toHaveLength(2);
    expect(finalRead.pages[0]).not.toContain('Not complete');
  });
});

describe('the bytes', () => {
  it('are the same for the same input, today and later', async () => {
    expect(Buffer.from(await packetPdf(samplePacket())).equals(Buffer.from(finalPdf))).toBe(true);
    const later = await packetPdf({ ...finalInput, madeAt: '2031-01-01T00:00:00.000Z' });
    expect(Buffer.from(later).equals(Buffer.from(finalPdf))).toBe(true);
  });

  it('are PDF 1.7 with the marks of PDF/A-3a', () => {
    const text = Buffer.from(finalPdf).toString('latin1');
    expect(text.startsWith('%PDF-1.7')).toBe(true);
    expect(text).toContain('<pdfaid:part>3</pdfaid:part>');
    expect(text).toContain('<pdfaid:conformance>A</pdfaid:conformance>');
    expect(text).toContain('/AFRelationship /Source');
    expect(text).toContain('/OutputIntents');
    expect(text).toContain('/Marked true');
    expect(text).not.toContain('/ModDate (D:2026\n');
  });

  it('hold a photo once, however often it is shown', async () => {
    const { run } = sampleRecordInput();
    const [first] = run.photos;
    if (!first) throw new Error('the sample has photos');
    const sameEverywhere = { ...run, photos: run.photos.map((photo) => ({ ...first, itemKey: photo.itemKey })) };
    const bytes = Buffer.from(await packetPdf(samplePacket({}, { run: sameEverywhere }))).toString('latin1');
    expect(bytes.match(/\/Subtype \/Image/gu)).toHaveLength(1);
  });

  it('hold no place of a photo', () => {
    expect(Buffer.from(finalInput.photos[1]?.bytes ?? []).includes('GPS-PLACE')).toBe(true);
    expect(Buffer.from(finalPdf).includes('GPS-PLACE')).toBe(false);
  });
});

describe('the pages', () => {
  it.each([
    ['final', finalInput],
    ['draft', draftInput],
  ])('have a glyph for every code point of every text (%s)', (_which, input) => {
    const missing = textOps(input).flatMap((op) =>
      [...op.text].filter((letter) => !hasGlyph(letter.codePointAt(0) ?? 0)),
    );
    expect(missing).toEqual([]);
    // The one box is the sentence that explains it.
    expect(textOps(input).filter((op) => op.text.includes(NO_GLYPH))).toHaveLength(1);
  });

  it('write the word of every verdict, so that none rests on a shape or a colour', () => {
    const input = samplePacket({}, { findings: [...sampleFindings(), sampleStop()] });
    const text = textOps(input)
      .map((op) => op.text)
      .join(' ');
    for (const verdict of VERDICTS) {
      const [firstWord = ''] = VERDICT_WORDS[verdict].split(' ');
      expect(text).toContain(firstWord);
    }
  });

  it('keep the ember for what must stop', () => {
    const ember = (input: PacketInput) => JSON.stringify(packetPages(input).model.pages).includes('#b0421c');
    expect(ember(finalInput)).toBe(false);
    expect(ember(samplePacket({}, { findings: [...sampleFindings(), sampleStop()] }))).toBe(true);
  });

  it('never say that something is safe, covered or void', () => {
    for (const input of [finalInput, draftInput]) {
      const text = textOps(input)
        .map((op) => op.text)
        .join(' ');
      expect(text).not.toMatch(/\b(safe|unsafe|covered|void|voided|warranted)\b/iu);
    }
  });

  it('are US Letter in North America and A4 elsewhere', () => {
    const { site } = sampleRecordInput();
    const abroad = samplePacket({}, { site: { ...site, country: 'NO', region: null, jurisdiction: 'europe' } });
    expect(packetPages(finalInput).model).toMatchObject({ width: 612, height: 792 });
    expect(packetPages(abroad).model).toMatchObject({ width: 595.28, height: 841.89 });
  });

  it('show what an erased person left as erased, and hold the same fingerprint', () => {
    const erased = {
      ...finalInput,
      disclosures: finalInput.disclosures.map((one) => ({ ...one, salt: null, value: null })),
    };
    const text = textOps(erased)
      .map((op) => op.text)
      .join(' ');
    expect(text).toContain('(erased)');
    expect(text).not.toContain('Ærøskøbing');
    expect(packetPages(erased).view.sha256).toBe(packetPages(finalInput).view.sha256);
  });

  it('name an amendment and the entry it follows', () => {
    const first = sealHash(canonicalJson(finalInput.record));
    const amended = buildSealedRecord(
      {
        ...sampleRecordInput(),
        seal: sampleSeal({
          sequence: 2,
          kind: 'amendment',
          previousSha256: first,
          amends: { sha256: first, reason: 'Gauge read again with another instrument' },
        }),
      },
      sampleSalts('second'),
    );
    const text = textOps({ ...finalInput, record: amended.record, disclosures: amended.disclosures })
      .map((op) => op.text)
      .join(' ');
    expect(text).toContain('Gauge read again with another instrument');
    expect(text).toContain('Entry 2 of this visit’s chain');
  });
});

describe('the packet, as system tools see it', () => {
  it.skipIf(!hasTool('qpdf'))('passes qpdf --check', () => {
    expect(runTool('qpdf', ['--check', join(folder, 'final.pdf')])).toContain('No syntax or stream encoding errors');
    expect(runTool('qpdf', ['--check', join(folder, 'draft.pdf')])).toContain('No syntax or stream encoding errors');
  });

  it.skipIf(!hasTool('pdffonts'))('has every font embedded, as a subset, with a way back to Unicode (pdffonts)', () => {
    const rows = runTool('pdffonts', [join(folder, 'final.pdf')])
      .split('\n')
      .slice(2)
      .filter((line) => line !== '');
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) expect(row).toMatch(/SourceSans3.* yes yes yes /u);
  });

  it.skipIf(!hasTool('pdfdetach'))('gives the very bytes of the record back (pdfdetach)', () => {
    const out = join(folder, 'out.json');
    runTool('pdfdetach', ['-savefile', 'record.json', '-o', out, join(folder, 'final.pdf')]);
    expect(readFileSync(out, 'utf8')).toBe(canonicalJson(finalInput.record));
  });

  it.skipIf(!hasTool('pdftotext'))('gives its text back (pdftotext)', () => {
    const text = runTool('pdftotext', ['-layout', join(folder, 'final.pdf'), '-']);
    expect(text).toContain('Åse Ærøskøbing-Łukaszewicz');
    expect(text).toContain('Łukasz Brzęczyszczykiewicz');
  });
});
