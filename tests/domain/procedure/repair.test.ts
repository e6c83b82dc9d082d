/** What a changed part, an adjustment and an open fault ask of a run, and what a tuning run writes down. */
import { describe, expect, it } from 'vitest';
import { judgeRun } from '../../../domain/judgement/judgeRun.ts';
import type { ModelSheet, StepItem } from '../../../domain/procedure/modelSheet.ts';
import { parseModelSheet } from '../../../domain/procedure/parseModelSheet.ts';
import { runProgress } from '../../../domain/procedure/progress.ts';
import type { RecordedPart, RunRecord } from '../../../domain/procedure/runRecord.ts';
import { stagePoint } from '../../../domain/procedure/stagePoint.ts';
import { stepListOf } from '../../../domain/procedure/stepListOf.ts';
import { driveRun } from '../../support/driveRun.ts';
import { HEALTHY_INSTRUMENT, plausibleEntry } from '../../support/plausibleEntry.ts';
import { emptyRecord, reading, secondsAfter, TECHNICIAN_ID, withAnswer } from '../../support/runRecordBuilder.ts';
import { readShippedSheets } from '../../support/shippedSheets.ts';

const sheet = readShippedSheets().find(({ sheetId }) => sheetId === 'ebberlund-skerry-s') as ModelSheet;

function changed(record: RunRecord, partKey: string, at: string): RunRecord {
  const part: RecordedPart = {
    rowId: partKey,
    itemKey: 'parts-changed',
    partKey,
    label: partKey,
    partNumber: 'N-1',
    serial: null,
    byId: TECHNICIAN_ID,
    at,
  };
  return { ...record, parts: [...(record.parts ?? []), part] };
}
const progressOf = (record: RunRecord, now: string, steps: 'repair' | 'service' = 'repair') =>
  runProgress({ sheet, steps, record, findings: [], now });
const itemsOf = (progress: ReturnType<typeof progressOf>, stepKey: string) =>
  progress.steps.find((step) => step.stepKey === stepKey)?.items ?? [];

const walked = driveRun(sheet, 'repair', emptyRecord('natural-gas', { kind: 'repair' }));

describe('a repair', () => {
  it('walks its own list where the sheet has one, else the service', () => {
    expect(stepListOf('repair', sheet)).toBe('repair');
    const { repair: _repair, ...without } = sheet;
    expect(stepListOf('repair', without)).toBe('service');
  });

  it('asks for no tuning run while no part wants one', () => {
    expect(itemsOf(walked.progress, 'tuning')).toEqual([]);
    const { progress } = driveRun(
      sheet,
      'repair',
      changed(emptyRecord('natural-gas', { kind: 'repair' }), 'pump', walked.now),
    );
    expect(itemsOf(progress, 'tuning')).toEqual([]);
  });

  it('holds its flue readings to be proven without one', () => {
    const record = { ...emptyRecord('natural-gas', { kind: 'repair' }), instruments: [HEALTHY_INSTRUMENT] };
    const { progress } = driveRun(sheet, 'repair', record, undefined, {
      judge: (run) => judgeRun({ record: run, sheet }),
      style: { instrumentId: HEALTHY_INSTRUMENT.instrumentId, entryFor: plausibleEntry(sheet, 'natural-gas', 24) },
    });
    expect(progress.gates.leaving).toEqual([]);
  });

  it('asks for it once a part does, keeps the visit open, and says because of which', () => {
    const progress = progressOf(changed(walked.record, 'gas-valve', walked.now), secondsAfter(walked.now, 60));
    const tuning = itemsOf(progress, 'tuning').find(({ itemKey }) => itemKey === 'tuning-run');
    expect(tuning?.because).toContainEqual({ code: 'asked-for-part', partLabel: 'Gas valve' });
    const open = progress.gates.leaving.map(({ itemKey }) => itemKey);
    expect(open).toContain('tuning-run');
    // Both ends were read before the change: they are read again.
    expect(open).toEqual(expect.arrayContaining(['high-flue', 'low-flue']));
    const high = itemsOf(progress, 'combustion-high').find(({ itemKey }) => itemKey === 'high-flue');
    expect(high?.because).toContainEqual({ code: 'adjusted-since', at: walked.now });
  });

  it('is clear again once that is done', () => {
    const early = changed(emptyRecord('natural-gas', { kind: 'repair' }), 'gas-valve', '2020-01-01T00:00:00.000Z');
    expect(driveRun(sheet, 'repair', early).progress.gates).toEqual({ firing: [], leaving: [], registration: [] });
  });

  it('does not count a tuning run that was made before the change', () => {
    const early = changed(emptyRecord('natural-gas', { kind: 'repair' }), 'gas-valve', '2020-01-01T00:00:00.000Z');
    const done = driveRun(sheet, 'repair', early);
    const later = progressOf(changed(done.record, 'fan', done.now), secondsAfter(done.now, 60));
    expect(itemsOf(later, 'tuning').find(({ itemKey }) => itemKey === 'tuning-run')?.because).toContainEqual({
      code: 'part-changed-since',
      partLabel: 'Fan',
      at: done.now,
    });
  });
});

describe('an adjustment', () => {
  it('has both ends read again, and what was found before the work left as it was', () => {
    const service = driveRun(sheet, 'service', emptyRecord('natural-gas', { kind: 'service' }));
    const adjusted = withAnswer(service.record, 'adjusted', 'yes-read-again', service.now);
    const open = progressOf(adjusted, secondsAfter(service.now, 60), 'service').gates.leaving.map(
      ({ itemKey }) => itemKey,
    );
    expect(open).toEqual(['high-flue', 'low-flue']);
  });
});

describe('a tuning run with readings at its stages', () => {
  const withNeeded = (item: StepItem): StepItem =>
    item.kind === 'tuning' ? { ...item, stageReadings: [{ quantity: 'fanSpeedRpm', isNeeded: true }] } : item;
  const demanding: ModelSheet = {
    ...sheet,
    service: sheet.service.map((step) => ({ ...step, items: step.items.map(withNeeded) })),
  };
  const service = driveRun(sheet, 'service', emptyRecord('natural-gas', { kind: 'service' }));
  const because = (record: RunRecord) =>
    runProgress({ sheet: demanding, steps: 'service', record, findings: [], now: service.now })
      .steps.flatMap(({ items }) => items)
      .find(({ itemKey }) => itemKey === 'tuning-run')?.because;
  const tuning = service.record.tunings[0];
  const stages = demanding.service
    .flatMap(({ items }) => items)
    .flatMap((item) => (item.kind === 'tuning' ? item.stages : []));
  const read = (at: string) =>
    stages.map(({ key }, index) =>
      reading('tuning-run', 'fanSpeedRpm', 1500 + 900 * index, at, { point: stagePoint(key), sample: index + 1 }),
    );

  it('is not finished before each is read where the sheet needs it', () => {
    expect(because(service.record)).toEqual([
      { code: 'stage-not-read', stageKey: stages[0]?.key, quantity: 'fanSpeedRpm' },
    ]);
    const readings = [...service.record.readings, ...read(tuning?.finishedAt ?? '')];
    expect(because({ ...service.record, readings })).toEqual([]);
  });

  it('does not count what was written down for a run that was interrupted', () => {
    const readings = [...service.record.readings, ...read('2020-01-01T00:00:00.000Z')];
    expect(because({ ...service.record, readings })).toHaveLength(1);
  });
});

describe('a sheet', () => {
  const problems = (change: Partial<ModelSheet>) => {
    const parsed = parseModelSheet({ ...sheet, ...change });
    return parsed.ok ? [] : JSON.stringify(parsed.error);
  };
  it('may not ask for parts it does not list, nor list one twice', () => {
    expect(problems({ parts: [] })).toMatch(/lists none/);
    const [first] = sheet.parts ?? [];
    expect(problems({ parts: first === undefined ? [] : [...(sheet.parts ?? []), first] })).toMatch(/there twice/);
  });

  it('may only hang an item on a part that is asked for before', () => {
    const repair = sheet.repair?.map((step) => ({
      ...step,
      items: step.items.filter((item) => item.kind !== 'parts'),
    }));
    expect(problems(repair === undefined ? {} : { repair })).toMatch(/no earlier item asks which parts/);
  });
});
