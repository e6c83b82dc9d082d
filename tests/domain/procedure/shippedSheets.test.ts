import { describe, expect, it } from 'vitest';
import type { StepList } from '../../../domain/procedure/progressTypes.ts';
import { stepsOfList } from '../../../domain/procedure/stepListOf.ts';
import { driveRun } from '../../support/driveRun.ts';
import { emptyRecord } from '../../support/runRecordBuilder.ts';
import { readShippedSheets, SHEET_FILES } from '../../support/shippedSheets.ts';

const lists: readonly StepList[] = ['startup', 'service', 'repair'];
const runs = readShippedSheets().flatMap((sheet) =>
  sheet.fuels.flatMap(({ fuel }) => lists.map((list) => ({ sheet, fuel, list, name: sheet.sheetId }))),
);

describe('the sheets that come with the program', () => {
  it('are named after their sheetId, and no two share a name or a title', () => {
    const sheets = readShippedSheets();
    expect(sheets.map((sheet) => `${sheet.sheetId}.json`).sort()).toEqual([...SHEET_FILES].sort());
    expect(new Set(sheets.map((sheet) => sheet.title)).size).toBe(sheets.length);
  });

  it.each(runs)('$name: a $list on $fuel runs to all gates clear', ({ sheet, fuel, list }) => {
    const record = emptyRecord(fuel, {
      kind: list,
      appliance: { ...emptyRecord(fuel).appliance, hasConversionRecord: sheet.fuels[0]?.fuel !== fuel },
    });
    const { progress, entries } = driveRun(sheet, list, record);
    expect(progress.gates).toEqual({ firing: [], leaving: [], registration: [] });
    expect(progress.steps.map((step) => step.state)).toEqual(stepsOfList(sheet, list).map(() => 'done'));
    expect(entries).toBeGreaterThan(50);
  });
});
