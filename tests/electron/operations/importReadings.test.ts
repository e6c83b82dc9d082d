/** Readings out of an instrument's file: all or none, judged like typed ones, the file's times kept. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { judgeRun } from '../../../domain/judgement/judgeRun.ts';
import type { InputOf } from '../../../electron/contract/index.ts';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { type BookedRun, bookAndBegin } from '../../support/wholeJob.ts';

type Row = InputOf<'visits.importReadings'>['readings'][number];

const ROOM_CO: Row = {
  stepKey: 'arrival',
  itemKey: 'room-co',
  quantity: 'roomCoPpm',
  sample: 1,
  typedText: '3',
  typedUnit: 'ppm',
  measuredAt: '2026-03-02T13:04:00.000Z',
};

describe('visits.importReadings', () => {
  let test: TestCore;
  let office: Office;
  let run: BookedRun;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    run = await bookAndBegin(test, office);
    await test.must('visits.openStep', { visitId: run.visitId, runId: run.runId, stepKey: 'arrival' });
    test.wait(600);
  });
  afterEach(() => test.remove());
  const ref = () => ({ visitId: run.visitId, runId: run.runId });
  const take = (readings: Row[], more: Partial<InputOf<'visits.importReadings'>> = {}) =>
    test.ask('visits.importReadings', {
      ...ref(),
      instrumentId: office.analyserId,
      measuredById: null,
      decimalSign: null,
      readings,
      ...more,
    });
  const readings = async () => (await test.must('visits.getRun', ref())).record.readings;

  it('writes them as imported, with the file’s own time and text, and replaces what stood there', async () => {
    await test.must('visits.recordReading', {
      ...ref(),
      ...pick(ROOM_CO),
      typedText: '2',
      typedUnit: 'ppm',
      notMeasuredReason: null,
      instrumentId: null,
      measuredById: null,
    });
    expect(await take([ROOM_CO])).toMatchObject({ ok: true });
    const [typed, imported] = await readings();
    expect(imported).toMatchObject({
      origin: 'imported',
      typedText: '3',
      valueOwn: 3,
      measuredAt: ROOM_CO.measuredAt,
      instrumentId: office.analyserId,
      measuredById: office.technicianId,
    });
    expect(typed?.supersededById).toBe(imported?.readingId);
  });

  it('keeps >1500 as over the range, and judges it', async () => {
    await take([{ ...ROOM_CO, typedText: '>1500' }]);
    const { record, sheet } = await test.must('visits.getRun', ref());
    expect(record.readings).toMatchObject([{ comparator: '>', valueOwn: 1500, typedText: '>1500' }]);
    expect(judgeRun({ record, sheet }).some((finding) => finding.verdict === 'stop')).toBe(true);
  });

  it.each<[string, Partial<Row>, object]>([
    ['a cell that is no number', { typedText: 'OL' }, { code: 'cannot-read-row', data: { position: 1 } }],
    ['a dash', { typedText: '---' }, { code: 'cannot-read-row', data: { position: 1, problem: { code: 'empty' } } }],
    ['a thousands mark nobody explained', { typedText: '1,234' }, { code: 'cannot-read-row' }],
    ['a time before the visit', { measuredAt: '2026-03-01T13:04:00.000Z' }, { code: 'outside-the-visit' }],
    ['a time to come', { measuredAt: '2026-03-02T15:00:00.000Z' }, { code: 'outside-the-visit' }],
    ['an item that takes no such thing', { quantity: 'o2DryVolPct' }, { code: 'no-such-item' }],
    ['a step that is not open', { stepKey: 'combustion-high', itemKey: 'high' }, { code: 'step-not-open' }],
    ['one place twice', { sample: 1 }, { code: 'one-place-twice', data: { position: 1 } }],
  ])('takes nothing in when one row is %s', async (_name, wrong, error) => {
    const before = test.snapshot();
    expect(await take([ROOM_CO, { ...ROOM_CO, sample: 2, ...wrong }])).toMatchObject({ ok: false, error });
    expect(test.snapshot()).toBe(before);
  });

  it('keeps what an instrument’s columns mean, and changes it', async () => {
    const at = { instrumentId: office.analyserId };
    expect(await test.must('instruments.getMapping', at)).toEqual({ mapping: null });
    const mapping = { columns: [{ heading: 'O2', means: 'nothing' as const }], decimalSign: null, dayOrder: null };
    await test.must('instruments.keepMapping', { ...at, mapping });
    await test.must('instruments.keepMapping', { ...at, mapping: { ...mapping, decimalSign: 'comma' } });
    expect(await test.must('instruments.getMapping', at)).toEqual({ mapping: { ...mapping, decimalSign: 'comma' } });
  });

  it('lets a helper type for the licensed person, not measure for them', async () => {
    await test.must('session.signIn', { staffId: office.helperId, pin: PIN });
    expect(await take([ROOM_CO], { measuredById: office.technicianId })).toMatchObject({ ok: true });
    expect((await readings()).at(-1)).toMatchObject({ measuredById: office.technicianId, typedById: office.helperId });
  });
});

function pick({ stepKey, itemKey, quantity, sample }: Row) {
  return { stepKey, itemKey, quantity, sample };
}
