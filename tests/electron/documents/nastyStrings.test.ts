import { describe, expect, it, vi } from 'vitest';
import { hasGlyph } from '../../../electron/documents/documentFonts.ts';
import { packetPages, packetPdf } from '../../../electron/documents/packet/packetPdf.ts';
import { type PdfValue, readPdfObjects } from '../../../electron/documents/verify/pdfObjects.ts';
import { verifyFile } from '../../../electron/documents/verify/verifyFile.ts';
import type { RecordInput } from '../../../electron/sealing/sealInput.ts';
import { samplePacket } from '../../support/packetSample.ts';
import { readPdf } from '../../support/readPdf.ts';
import { sampleRecordInput } from '../../support/recordSample.ts';

// Whole documents and chains on a machine that is busy with other tests.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

/** Two hundred texts that break out of something: PDF, XML, JSON, CSV, HTML, paths, encodings, writing directions. */
const BREAKERS = [
  ') Tj ET /JS (app.alert(1)) /S /JavaScript',
  '>> /OpenAction << /S /JavaScript /JS (x) >>',
  '/AA << /O << /S /Launch /F (calc.exe) >> >>',
  'endstream endobj 1 0 obj << /Type /Catalog >>',
  '%%EOF\ntrailer << /Root 1 0 R >>',
  '(((((((((((',
  '))))))))))',
  '\\',
  '\\)',
  '<3c>',
  '<</Type/Action/S/URI/URI(javascript:alert(1))>>',
  'javascript:alert(1)',
  'file:///etc/passwd',
  '&amp;&lt;&#x3c;',
  '<script>alert(1)</script>',
  '</rdf:li><x:evil/>',
  '<!DOCTYPE a [<!ENTITY b SYSTEM "file:///etc/passwd">]>',
  ']]>',
  '<?xpacket end="w"?>',
  '"; DROP TABLE seals; --',
  '=cmd|"/c calc"!A1',
  '@SUM(1)',
  '{"a":1,"a":2}',
  '\u202egnp.exe',
  '\u0000\u0001\u001f',
  '\ud800',
  '\ufffe\uffff',
  '\u200b\u200d\ufeff',
  'Z\u0361\u0489a\u0334l\u0321g\u0322o',
  '🧑🏽‍🔧🔥',
  '漢字かな交じり文',
  'مرحبا بالعالم',
  'שלום',
  '../../../../etc/passwd',
  'CON.txt',
  '%s%n%x',
  '{{7*7}}#{7*7}',
  'a'.repeat(4000),
  'word '.repeat(700),
  '-'.repeat(300),
] as const;

function nastyStrings(): readonly string[] {
  const made: string[] = [];
  for (let index = 0; made.length < 200; index += 1) {
    const breaker = BREAKERS[index % BREAKERS.length] ?? '';
    const other = BREAKERS[(index * 7 + 3) % BREAKERS.length] ?? '';
    made.push(index < BREAKERS.length ? breaker : `${breaker.slice(0, 120)} ${other.slice(0, 120)} ${index}`);
  }
  return made;
}

/** Puts nasty texts wherever a person may type. */
function nastyInput(strings: readonly string[]): RecordInput {
  const input = sampleRecordInput();
  let at = 0;
  const next = (limit = 300): string => {
    const text = strings[at % strings.length] ?? '';
    at += 1;
    return `${text.toWellFormed().slice(0, limit - 1)}.`;
  };
  return {
    ...input,
    company: { ...input.company, name: next(), street: next() },
    parties: input.parties.map((one) => ({
      ...one,
      party: { ...one.party, name: next(), street: next(), city: next() },
    })),
    crew: input.crew.map((one) => ({
      ...one,
      name: next(),
      licences: one.licences.map((licence) => ({ ...licence, number: next(), licenceClass: next() })),
    })),
    site: { ...input.site, street: next(), city: next(), label: next() },
    appliance: { ...input.appliance, serial: next(), maker: next(), model: next(), ventKind: next(), position: next() },
    permits: input.permits.map((one) => ({ ...one, number: next(), issuer: next() })),
    run: {
      ...input.run,
      answers: input.run.answers.map((one) => ({ ...one, value: next(4000), reason: next(4000) })),
      readings: input.run.readings.map((one) => ({ ...one, notMeasuredReason: one.valueOwn === null ? next() : null })),
      instruments: input.run.instruments.map((one) => ({ ...one, label: next(), serial: next() })),
    },
  };
}

const FORBIDDEN = new Set([
  'JS',
  'JavaScript',
  'AA',
  'OpenAction',
  'Launch',
  'Action',
  'URI',
  'SubmitForm',
  'RichMedia',
]);

function forbiddenNames(value: PdfValue): readonly string[] {
  if (value instanceof Map) {
    return [...value].flatMap(([key, item]) => [...(FORBIDDEN.has(key) ? [key] : []), ...forbiddenNames(item)]);
  }
  if (Array.isArray(value)) return value.flatMap((item: PdfValue) => forbiddenNames(item));
  if (typeof value === 'object' && value !== null && 'name' in value)
    return FORBIDDEN.has(value.name) ? [value.name] : [];
  return [];
}

describe('200 nasty strings', () => {
  const strings = nastyStrings();

  it('are two hundred, all different', () => {
    expect(new Set(strings).size).toBe(200);
  });

  it('leave a packet without a script, action or link, well-formed, complete and verifiable', async () => {
    const input = samplePacket({ gapReason: strings[5] ?? '' }, nastyInput(strings));
    const pdf = await packetPdf(input);
    for (const { value } of readPdfObjects(pdf).values()) expect(forbiddenNames(value)).toEqual([]);
    const read = await readPdf(pdf);
    expect(read.pages.length).toBeGreaterThan(5);
    expect(read.attachments).toEqual(['disclosures.json', 'record.json']);
    expect(verifyFile(pdf)).toMatchObject({ isIntact: true, problems: [] });
  });

  it('leave no text that cannot be drawn', () => {
    const { model } = packetPages(samplePacket({}, nastyInput(strings)));
    const letters = new Set(
      model.pages
        .flatMap((page) => [...page.body.map(({ op }) => op), ...page.chrome])
        .flatMap((op) => (op.kind === 'text' ? [...op.text] : [])),
    );
    expect([...letters].filter((letter) => !hasGlyph(letter.codePointAt(0) ?? 0))).toEqual([]);
  });

  it('leave the document’s own XML as XML', async () => {
    const pdf = Buffer.from(await packetPdf(samplePacket({}, nastyInput(strings)))).toString('utf8');
    const from = pdf.indexOf('<?xpacket begin');
    const xml = pdf.slice(from, pdf.indexOf('<?xpacket end', from));
    const open = [...xml.matchAll(/<([a-zA-Z:]+)[^<>]*>/gu)].map(([, name]) => name).toSorted();
    const closed = [...xml.matchAll(/<\/([a-zA-Z:]+)>/gu)].map(([, name]) => name).toSorted();
    expect(open).toEqual(closed);
    expect(xml).not.toContain('evil');
  });
});
