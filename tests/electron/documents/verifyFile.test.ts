import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { readPhotoFacts } from '../../../domain/photos/readPhotoFacts.ts';
import { checksumsText, type PacketFiles, packetFiles } from '../../../electron/documents/packet/packetFiles.ts';
import { readZip } from '../../../electron/documents/verify/readZip.ts';
import { verifyFile } from '../../../electron/documents/verify/verifyFile.ts';
import { canonicalJson, sealHash, sha256Hex } from '../../../electron/sealing/canonicalJson.ts';
import { sampleDraft, samplePacket } from '../../support/packetSample.ts';
import { samplePhotos } from '../../support/recordSample.ts';
import { hasTool } from '../../support/systemTools.ts';

// Whole documents and chains on a machine that is busy with other tests.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const folder = mkdtempSync(join(tmpdir(), 'verify-'));
const input = samplePacket();
const fingerprint = sealHash(canonicalJson(input.record));
let files: PacketFiles;

beforeAll(async () => {
  files = await packetFiles(input);
});
afterAll(() => rmSync(folder, { recursive: true }));

function codesOf(bytes: Uint8Array): readonly string[] {
  return verifyFile(bytes).problems.map((problem) => problem.code);
}

/** The same ZIP with some files changed; `null` takes one out. */
function rezip(changes: Readonly<Record<string, Uint8Array | null>>, isListed = false): Uint8Array {
  const content = new Map<string, Uint8Array>(Object.entries(unzipSync(files.packetZip)));
  for (const [name, bytes] of Object.entries(changes)) {
    if (bytes === null) content.delete(name);
    else content.set(name, bytes);
  }
  if (isListed) {
    content.delete('checksums.txt');
    content.set('checksums.txt', strToU8(checksumsText(content)));
  }
  return zipSync(Object.fromEntries(content));
}

describe('the ZIP', () => {
  it('holds pages, record, what is behind it, readings, checksums, and the photos that say no place', () => {
    const content = unzipSync(files.packetZip);
    const names = Object.keys(content);
    expect(names.filter((name) => !name.startsWith('photos/'))).toEqual([
      'checksums.txt',
      'disclosures.json',
      'packet.pdf',
      'readings.csv',
      'record.json',
    ]);
    const photos = names.filter((name) => name.startsWith('photos/')).map((name) => sha256Hex(content[name] ?? ''));
    // One of them tells where, and the sample has no copy of it that does not: it stays here.
    const plain = samplePhotos().filter(({ bytes }) => !readPhotoFacts(bytes).mayTellPlace);
    expect(plain).toHaveLength(samplePhotos().length - 1);
    expect(new Set(photos)).toEqual(new Set(plain.map((photo) => photo.sha256)));
    expect(Buffer.from(content['record.json'] ?? []).toString('utf8')).toBe(canonicalJson(input.record));
    expect(Buffer.from(content['packet.pdf'] ?? []).equals(Buffer.from(files.packetPdf))).toBe(true);
  });

  it('has the same bytes whenever it is made', async () => {
    const again = await packetFiles(samplePacket({ madeAt: '2030-06-01T00:00:00.000Z' }));
    expect(Buffer.from(again.packetZip).equals(Buffer.from(files.packetZip))).toBe(true);
  });

  it('lists each reading once, as typed and in its own unit, numbers as numbers', () => {
    const csv = Buffer.from(unzipSync(files.packetZip)['readings.csv'] ?? []).toString('utf8');
    const rows = csv.replace('\ufeff', '').trimEnd().split('\r\n');
    expect(rows).toHaveLength(input.record.run.readings.length + 1);
    expect(rows.find((row) => row.startsWith('combustion-high,high-supply'))).toContain(',142.5,°F,61.4,°C,');
  });

  it.skipIf(!hasTool('sha256sum'))('has checksums that sha256sum takes', () => {
    const out = join(folder, 'unpacked');
    const content = unzipSync(files.packetZip);
    execFileSync('mkdir', ['-p', join(out, 'photos')]);
    for (const [name, bytes] of Object.entries(content)) writeFileSync(join(out, name), bytes);
    expect(execFileSync('sha256sum', ['-c', 'checksums.txt'], { cwd: out, encoding: 'utf8' })).not.toContain('FAILED');
  });
});

describe('verifyFile', () => {
  it('finds nothing wrong with the three files as they were made', () => {
    expect(verifyFile(files.packetPdf)).toMatchObject({
      kind: 'packet-pdf',
      sha256: fingerprint,
      isIntact: true,
      isSealed: true,
    });
    expect(verifyFile(files.recordJson)).toMatchObject({ kind: 'record-json', sha256: fingerprint, isIntact: true });
    expect(verifyFile(files.packetZip)).toMatchObject({ kind: 'packet-zip', sha256: fingerprint, isIntact: true });
    expect(files.sha256).toBe(fingerprint);
  });

  it('says what a bare record was held against: nothing, so the paper has to tell', () => {
    expect(verifyFile(files.recordJson).heldAgainst).toEqual([]);
    expect(verifyFile(files.packetPdf).heldAgainst).toEqual(['file-digest', 'disclosures']);
  });

  it('says that a draft is not sealed', async () => {
    const draft = await packetFiles(sampleDraft());
    expect(verifyFile(draft.packetPdf)).toMatchObject({ isIntact: true, isSealed: false, sealedAt: null });
    expect(verifyFile(draft.recordJson)).toMatchObject({ isIntact: true, isSealed: false });
  });

  it('should notice every one of many flipped bytes of a PDF', () => {
    const step = Math.max(1, Math.floor(files.packetPdf.length / 60));
    for (let at = 0; at < files.packetPdf.length; at += step) {
      const flipped = files.packetPdf.slice();
      flipped[at] = (flipped[at] ?? 0) ^ 0x01;
      expect(verifyFile(flipped).isIntact, `byte ${at}`).toBe(false);
    }
  });

  it('should notice a flipped byte in the content of any file of the ZIP', () => {
    const content = unzipSync(files.packetZip);
    for (const [name, bytes] of Object.entries(content)) {
      for (const at of [0, Math.floor(bytes.length / 2), bytes.length - 2]) {
        const flipped = bytes.slice();
        flipped[at] = (flipped[at] ?? 0) ^ 0x01;
        expect(verifyFile(rezip({ [name]: flipped })).isIntact, `${name} byte ${at}`).toBe(false);
      }
    }
  });

  it('gives another fingerprint, or none, for a record with a flipped byte', () => {
    for (let at = 0; at < files.recordJson.length; at += 997) {
      const flipped = files.recordJson.slice();
      flipped[at] = (flipped[at] ?? 0) ^ 0x01;
      expect(verifyFile(flipped).sha256).not.toBe(fingerprint);
    }
  });

  it('notices a record that was put in anew with fitting checksums', () => {
    const altered = Buffer.from(files.recordJson).toString('utf8').replace('"valueOwn":"82"', '"valueOwn":"28"');
    expect(altered).not.toBe(Buffer.from(files.recordJson).toString('utf8'));
    const codes = codesOf(rezip({ 'record.json': strToU8(altered) }, true));
    expect(codes).toEqual(expect.arrayContaining(['disclosures-of-another-record', 'pdf-holds-another-record']));
  });

  it('notices a changed name behind a commitment', () => {
    const content = unzipSync(files.packetZip);
    const forged = Buffer.from(content['disclosures.json'] ?? [])
      .toString('utf8')
      .replace('555-0166', '555-0167');
    expect(codesOf(rezip({ 'disclosures.json': strToU8(forged) }, true))).toEqual(['disclosure-differs']);
  });

  it('notices a file that is gone, added, or a photo of something else', () => {
    expect(codesOf(rezip({ 'readings.csv': null }))).toEqual(['file-missing']);
    expect(codesOf(rezip({ 'extra.txt': strToU8('hello') }))).toEqual(['file-not-listed']);
    expect(codesOf(rezip({ 'photos/99-other.jpg': strToU8('x') }, true))).toEqual(['photo-not-in-record']);
    expect(codesOf(rezip({ 'checksums.txt': null }))).toEqual(['file-missing']);
    expect(codesOf(rezip({ 'packet.pdf': null }, true))).toEqual(['file-missing']);
    expect(codesOf(rezip({ 'checksums.txt': strToU8('not a list\n') }))).toContain('checksums-unreadable');
  });

  it('takes only the canonical bytes of a record', () => {
    const pretty = JSON.stringify(JSON.parse(Buffer.from(files.recordJson).toString('utf8')), null, 2);
    expect(codesOf(strToU8(pretty))).toEqual(['not-canonical']);
    expect(codesOf(new Uint8Array([...files.recordJson, 10]))).toEqual(['not-canonical']);
    expect(codesOf(strToU8('{"schema":"lightoff.record/1","schema":"lightoff.record/1"}'))).toEqual(['not-a-record']);
  });

  it.each([
    ['nothing', new Uint8Array(), 'not-recognised'],
    ['a text', strToU8('hello'), 'not-recognised'],
    ['an empty object', strToU8('{}'), 'not-a-record'],
    ['a PDF of somebody else', strToU8('%PDF-1.7\n1 0 obj\n<< /Type /Catalog >>\nendobj\n%%EOF'), 'no-record-inside'],
    ['half a ZIP', strToU8('PK\u0003\u0004 and then nothing'), 'zip-unreadable'],
    ['a ZIP of something else', zipSync({ 'a.txt': strToU8('a') }), 'no-record-inside'],
  ])('says of %s what it is', (_what, bytes, code) => {
    const verified = verifyFile(bytes);
    expect(verified.isIntact).toBe(false);
    expect(verified.sha256).toBeNull();
    expect(verified.problems.map((problem) => problem.code)).toContain(code);
  });

  it('should not hang or throw on damaged files', () => {
    for (const bytes of [files.packetPdf, files.packetZip]) {
      for (let length = 0; length < bytes.length; length += Math.ceil(bytes.length / 25)) {
        expect(verifyFile(bytes.slice(0, length)).isIntact).toBe(false);
      }
    }
  });
});

describe('readZip', () => {
  const zipped = (names: readonly string[]): Uint8Array =>
    zipSync(Object.fromEntries(names.map((name) => [name, strToU8('x')])));

  it.each(['../x', '/etc/passwd', 'a/../../b', 'C:/x', 'a\\b', 'a//b', '.hidden', 'a/', 'con\u0000', 'Ünicode', 'a b'])(
    'refuses the name %j',
    (name) => {
      expect(readZip(zipped([name]))).toMatchObject({ ok: false, error: { code: 'zip-name-refused' } });
    },
  );

  it('refuses a bomb before it unpacks it', () => {
    const bomb = zipSync({ 'zeros.bin': new Uint8Array(30_000_000) }, { level: 9 });
    expect(readZip(bomb)).toEqual({ ok: false, error: { code: 'zip-too-large' } });
  });
});

describe('a packet that another program has written anew', () => {
  const variants = [
    ['object streams', ['--object-streams=generate']],
    ['no object streams', ['--object-streams=disable']],
    ['uncompressed, with comments', ['--qdf']],
    ['recompressed', ['--recompress-flate', '--compression-level=9']],
    ['linearized', ['--linearize']],
  ] as const;

  it.skipIf(!hasTool('qpdf')).each(variants)(
    'still gives its record and fingerprint (qpdf, %s), and says it was rewritten',
    (_what, options) => {
      const source = join(folder, 'source.pdf');
      const target = join(folder, 'target.pdf');
      writeFileSync(source, files.packetPdf);
      execFileSync('qpdf', [...options, source, target]);
      const verified = verifyFile(new Uint8Array(readFileSync(target)));
      expect(verified.sha256).toBe(fingerprint);
      expect(verified.problems.map((problem) => problem.code)).toEqual(['pdf-changed']);
    },
  );
});
