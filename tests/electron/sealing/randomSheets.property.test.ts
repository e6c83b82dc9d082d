/** Any valid sheet, walked to its end, can be sealed: the record holds all of it, and the chain with an amendment verifies. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeRun } from '../../../domain/judgement/judgeRun.ts';
import type { ModelSheet } from '../../../domain/procedure/modelSheet.ts';
import { amendRecord } from '../../../electron/sealing/amendRecord.ts';
import { buildSealedRecord } from '../../../electron/sealing/buildSealedRecord.ts';
import { canonicalJson, sealHash } from '../../../electron/sealing/canonicalJson.ts';
import { type ChainEntry, chainProblems } from '../../../electron/sealing/chainProblems.ts';
import type { SealedRecord } from '../../../electron/sealing/sealedRecord.ts';
import { driveRun } from '../../support/driveRun.ts';
import { minutesIn, sampleRecordInput, sampleSalts, sampleSeal } from '../../support/recordSample.ts';
import { emptyRecord } from '../../support/runRecordBuilder.ts';
import { sheetArbitrary } from '../../support/sheetArbitrary.ts';
import { readShippedSheets } from '../../support/shippedSheets.ts';

describe('a run of any sheet', { timeout: 120_000 }, () => {
  it('can be sealed, and amended, and verified: random sheets', () => {
    fc.assert(
      fc.property(sheetArbitrary, (sheet) => sealAndVerify(sheet)),
      { numRuns: 100 },
    );
  });

  it('can be sealed: the sheets that come with the program, which differ in what the property is about', () => {
    const sheets = readShippedSheets();
    for (const sheet of sheets) sealAndVerify(sheet);
    const differ = (of: (sheet: ModelSheet) => unknown) =>
      new Set(sheets.map((sheet) => JSON.stringify(of(sheet)))).size;
    expect(sheets.length).toBeGreaterThanOrEqual(5);
    expect(differ((sheet) => sheet.startup.flatMap((step) => step.items.map(({ key }) => key)))).toBeGreaterThanOrEqual(
      5,
    );
    expect(differ((sheet) => sheet.fuels)).toBeGreaterThanOrEqual(3);
    expect(differ((sheet) => sheet.firingPoints)).toBeGreaterThanOrEqual(3);
    expect(differ((sheet) => sheet.appliance.hotWater)).toBeGreaterThanOrEqual(3);
  });
});

function sealAndVerify(sheet: ModelSheet): void {
  const fuel = sheet.fuels[0]?.fuel;
  if (fuel === undefined) throw new Error('a sheet without fuel');
  const { record: run, progress } = driveRun(sheet, 'startup', emptyRecord(fuel));
  expect(progress.gates.leaving).toEqual([]);
  const findings = judgeRun({ record: run, sheet, reopenedAt: null });
  const salts = sampleSalts();
  const sealed = buildSealedRecord(
    { ...sampleRecordInput({ sheet, steps: 'startup', run, findings, computed: [] }), seal: sampleSeal() },
    salts,
  );
  expect(sealed.record.run.readings).toHaveLength(run.readings.length);
  expect(sealed.record.sheet.steps.map(({ key }) => key)).toEqual(sheet.startup.map(({ key }) => key));
  const first = entryOf(sealed.record, 1, null);
  const amended = amendRecord(
    { ...sealed, sha256: first.sha256 },
    {
      path: '/appliance/serial',
      what: 'Serial number',
      was: sealed.record.appliance.serial,
      isNow: 'AB1234568',
      because: 'read again',
      judged: [],
      byId: 'staff-1',
      byName: 'A Name',
      at: minutesIn(400),
      partyId: null,
    },
    { sequence: 2, previousSha256: first.sha256 },
    salts,
  );
  const second = entryOf(amended.record, 2, first.sha256);
  const disclosures = [
    ...sealed.disclosures.map((one) => ({ ...one, sealId: 'seal-1' })),
    ...amended.disclosures.map((one) => ({ ...one, sealId: 'seal-2' })),
  ];
  expect(chainProblems([first, second], disclosures).flatMap(({ problems }) => problems)).toEqual([]);
  const { seal: _seal, ...before } = sealed.record;
  const { seal: _amendedSeal, ...after } = amended.record;
  expect(after).toEqual(before);
}

function entryOf(record: SealedRecord, sequence: number, previousSha256: string | null): ChainEntry {
  const canonical = canonicalJson(record);
  return {
    sealId: `seal-${sequence}`,
    visitId: record.visit.visitId,
    runId: record.run.runId,
    sequence,
    kind: record.seal.kind,
    canonical,
    sha256: sealHash(canonical),
    previousSha256,
  };
}
