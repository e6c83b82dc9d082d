import { describe, expect, expectTypeOf, it, vi } from 'vitest';
import type {
  RecordedAnswer,
  RecordedHold,
  RecordedInstrument,
  RecordedLockout,
  RecordedPart,
  RecordedPhoto,
  RecordedReading,
  RecordedSignOff,
  RecordedTuning,
  RunRecord,
} from '../../../domain/procedure/runRecord.ts';
import { buildDraftRecord, buildSealedRecord, sheetHash } from '../../../electron/sealing/buildSealedRecord.ts';
import { canonicalJson, sealHash, sha256Hex } from '../../../electron/sealing/canonicalJson.ts';
import { disclosureProblems } from '../../../electron/sealing/chainProblems.ts';
import { listCommitments } from '../../../electron/sealing/commitment.ts';
import { type SealedRecord, sealedRecord } from '../../../electron/sealing/sealedRecord.ts';
import { sampleRecordInput, sampleRun, sampleSalts, sampleSeal, sampleSheet } from '../../support/recordSample.ts';

// Whole documents and chains on a machine that is busy with other tests.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const built = buildSealedRecord({ ...sampleRecordInput(), seal: sampleSeal() }, sampleSalts());
const canonical = canonicalJson(built.record);

describe('buildSealedRecord', () => {
  it('holds everything that was recorded', () => {
    const run = sampleRun();
    expect(built.record.run.readings).toHaveLength(run.readings.length);
    expect(built.record.run.answers).toHaveLength(run.answers.length);
    expect(built.record.run.photos).toEqual(run.photos);
    expect(built.record.run.tunings[0]?.stages).toHaveLength(3);
    expect(built.record.findings).toHaveLength(sampleRecordInput().findings.length);
    expect(built.record.sheet.sha256).toBe(sheetHash(sampleSheet()));
  });

  it('has a place for every field of a run, so that a new one cannot be left out unnoticed', () => {
    type Run = SealedRecord['run'];
    // The site and the appliance of the run have a part of their own in the record.
    expectTypeOf<Exclude<keyof RunRecord, 'site' | 'appliance'>>().toEqualTypeOf<keyof Run>();
    expectTypeOf<keyof RecordedPart>().toEqualTypeOf<keyof NonNullable<Run['parts']>[number]>();
    expectTypeOf<keyof RecordedLockout>().toEqualTypeOf<keyof NonNullable<Run['lockouts']>[number]>();
    expectTypeOf<keyof RecordedReading>().toEqualTypeOf<keyof Run['readings'][number]>();
    expectTypeOf<keyof RecordedAnswer | 'words'>().toEqualTypeOf<keyof Run['answers'][number]>();
    expectTypeOf<keyof RecordedHold>().toEqualTypeOf<keyof Run['holds'][number]>();
    expectTypeOf<keyof RecordedTuning>().toEqualTypeOf<keyof Run['tunings'][number]>();
    expectTypeOf<keyof RecordedPhoto>().toEqualTypeOf<keyof Run['photos'][number]>();
    expectTypeOf<keyof RecordedSignOff>().toEqualTypeOf<keyof Run['signOffs'][number]>();
    expectTypeOf<keyof RecordedInstrument | 'calibratedOn' | 'calibrationDueOn' | 'certificate'>().toEqualTypeOf<
      keyof Run['instruments'][number]
    >();
  });

  it('writes every number as a decimal text', () => {
    const numbers: string[] = [];
    JSON.parse(canonical, (key, value: unknown) => {
      if (typeof value === 'number') numbers.push(key);
      return value;
    });
    expect(numbers).toEqual([]);
    expect(built.record.run.readings.find((one) => one.readingId.startsWith('reading-cold-pressure'))?.valueOwn).toBe(
      '0.97',
    );
  });

  it.each([
    'Ærøskøbing',
    'Łukasz',
    'Quillfeather',
    'Zwaluw',
    'Long Meadow',
    'Larch Hollow',
    'Foundry Lane',
    'Tamarack Falls',
    '555-01',
    'example.org',
    'harrowcreek',
    'GF-2231-B',
    'hard of hearing',
    'No drain of copper',
    'asks for none',
  ])('names "%s" nowhere: it is behind a commitment', (text) => {
    const withoutPublic = canonical
      .replaceAll('Tamarack Falls Gas', '')
      .replaceAll('Tamarack Falls building office', '');
    expect(withoutPublic).not.toContain(text);
    expect(built.disclosures.some((one) => one.value?.includes(text))).toBe(true);
  });

  it('discloses exactly what it commits to, each with a salt of its own', () => {
    const paths = built.disclosures.map((one) => one.path);
    expect(new Set(paths)).toEqual(new Set(listCommitments(built.record).keys()));
    expect(new Set(built.disclosures.map((one) => one.salt)).size).toBe(paths.length);
    expect(disclosureProblems(built.record, built.disclosures)).toEqual([]);
  });

  it('commits as documented: SHA-256 over salt, path and value, parted by line feeds', () => {
    const email = built.disclosures.find((one) => one.value === 'ase@example.org');
    expect(email?.path).toBe('/parties/0/email');
    expect(built.record.parties[0]?.email?.commitment).toBe(
      sha256Hex(`${email?.salt}\n/parties/0/email\nase@example.org`),
    );
  });

  it('ties what names the owner to the owner, so that erasing finds it', () => {
    const ofOwner = built.disclosures.filter((one) => one.partyId === built.record.parties[0]?.partyId);
    expect(ofOwner.map((one) => one.value)).toEqual(
      expect.arrayContaining(['Åse Ærøskøbing-Łukaszewicz', '555-0166', '4 Larch Hollow Road']),
    );
    expect(ofOwner.some((one) => one.path.startsWith('/run/answers/'))).toBe(true);
  });

  it('says of each licence whether it held on the day of the visit', () => {
    const late = sampleRecordInput();
    const after = buildSealedRecord(
      { ...late, visit: { ...late.visit, on: '2027-01-01' }, seal: sampleSeal() },
      sampleSalts(),
    );
    expect(built.record.people[0]?.licences[0]?.wasValidOnVisitDay).toBe(true);
    expect(after.record.people[0]?.licences[0]?.wasValidOnVisitDay).toBe(false);
  });

  it('gives the same bytes for the same input and salts, and other commitments for other salts', () => {
    const again = buildSealedRecord({ ...sampleRecordInput(), seal: sampleSeal() }, sampleSalts());
    const others = buildSealedRecord({ ...sampleRecordInput(), seal: sampleSeal() }, sampleSalts('other'));
    expect(canonicalJson(again.record)).toBe(canonical);
    expect(sealHash(canonicalJson(others.record))).not.toBe(sealHash(canonical));
  });

  it('refuses a number that is none', () => {
    const input = sampleRecordInput();
    const broken = { ...input, computed: input.computed.map((one) => ({ ...one, value: Number.NaN })) };
    expect(() => buildSealedRecord({ ...broken, seal: sampleSeal() }, sampleSalts())).toThrow('finite');
  });

  it('refuses a salt that could be guessed', () => {
    expect(() => buildSealedRecord({ ...sampleRecordInput(), seal: sampleSeal() }, () => 'ab')).toThrow('salt');
  });

  it('makes a draft that cannot pass for a sealed record', () => {
    const draft = buildDraftRecord(sampleRecordInput(), sampleSalts());
    expect(sealedRecord.safeParse(draft.record).success).toBe(false);
    expect(draft.record.schema).toBe('lightoff.draft/1');
  });
});
