import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { entryUnits } from '../../../domain/quantity/entryUnits.ts';
import type { InputOf } from '../../../electron/contract/index.ts';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { readPdf } from '../../support/readPdf.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { type BookedRun, bookAndBegin } from '../../support/wholeJob.ts';

type Written = InputOf<'paper.transcribe'>['written'];

describe('paper in place of the laptop', () => {
  let test: TestCore;
  let office: Office;
  let run: BookedRun;
  beforeEach(async () => {
    test = openTestCore('2026-03-02T18:00:00.000Z');
    office = await setUpOffice(test);
    run = await bookAndBegin(test, office);
  });
  afterEach(() => test.remove());

  const view = () => test.must('visits.getRun', { visitId: run.visitId, runId: run.runId });
  async function firstItem(kind: string) {
    const { sheet } = await view();
    const step =
      sheet.startup.find(
        (one) =>
          one.who !== 'dispatcher' &&
          one.items.some((item) => item.kind === kind && one.needsClear === null && one.after.length === 0),
      ) ?? sheet.startup.find((one) => one.items.some((item) => item.kind === kind));
    const item = step?.items.find((one) => one.kind === kind);
    if (step === undefined || item === undefined) throw new Error(`no ${kind}`);
    return { stepKey: step.key, itemKey: item.key, item };
  }
  const transcribe = (at: { stepKey: string; itemKey: string }, written: Written, byId = office.technicianId) =>
    test.ask('paper.transcribe', {
      visitId: run.visitId,
      runId: run.runId,
      on: '2026-03-02',
      byId,
      written,
      stepKey: at.stepKey,
      itemKey: at.itemKey,
    });
  const open = (stepKey: string) => test.must('visits.openStep', { visitId: run.visitId, runId: run.runId, stepKey });

  it('prints what is left with limits, units and room to write, on the firm’s own paper', async () => {
    const { attachmentId, openItems } = await test.must('paper.print', { visitId: run.visitId, runId: run.runId });
    expect(openItems).toBeGreaterThan(50);
    const file = await test.core.getFile(attachmentId, 'test-window');
    const { pages } = await readPdf(file?.bytes ?? new Uint8Array());
    const text = pages.join(' ');
    expect(text).toContain('hold points stay');
    expect(text).toContain('STOP beyond');
    const { sheet } = await view();
    const labels = sheet.startup.flatMap((step) =>
      step.items.filter(({ kind, onlyFor }) => kind === 'read' && onlyFor === undefined).map(({ label }) => label),
    );
    const plain = text.replaceAll(/\s+/g, '');
    expect(labels.filter((label) => !plain.includes(label.replaceAll(/\s+/g, '')))).toEqual([]);
  });

  it('keeps a reading and an answer as copied: who measured, the time of day written, who typed', async () => {
    const reading = await firstItem('read');
    await open(reading.stepKey);
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    if (reading.item.kind !== 'read') throw new Error('no reading');
    const { quantity } = reading.item;
    expect(
      await transcribe(reading, {
        kind: 'reading',
        quantity,
        sample: 1,
        typedText: '3',
        typedUnit: entryUnits(quantity)[0].symbol,
        notMeasuredReason: null,
        instrumentId: null,
        at: '11:40',
      }),
    ).toMatchObject({ ok: true });
    const { record } = await view();
    expect(record.readings[0]).toMatchObject({
      origin: 'transcribed',
      // 11:40 in Halifax, four hours behind UTC on that day.
      measuredAt: '2026-03-02T15:40:00.000Z',
      measuredById: office.technicianId,
      typedById: office.ownerId,
    });
    const confirm = await firstItem('confirm');
    await open(confirm.stepKey);
    expect(await transcribe(confirm, { kind: 'answer', value: 'yes', reason: null, at: '11:45' })).toMatchObject({
      ok: true,
    });
    expect((await view()).record.answers[0]).toMatchObject({
      byId: office.technicianId,
      at: '2026-03-02T15:45:00.000Z',
      transcribed: { typedById: office.ownerId, typedAt: test.now() },
    });
  });

  it('refuses times that cannot have been, and work by somebody without a licence', async () => {
    const { sheet } = await view();
    const step = sheet.startup.find(
      (one) => one.who === 'licensed' && one.needsClear === null && one.after.length === 0,
    );
    const anyone = await firstItem('confirm');
    await open(anyone.stepKey);
    const answer = (at: string): Written => ({ kind: 'answer', value: 'yes', reason: null, at });
    // 18:00 UTC is 14:00 there.
    expect(await transcribe(anyone, answer('14:30'))).toMatchObject({
      ok: false,
      error: { code: 'time-not-possible' },
    });
    expect(
      await test.ask('paper.transcribe', {
        visitId: run.visitId,
        runId: run.runId,
        ...anyone,
        on: '2026-02-27',
        byId: office.technicianId,
        written: answer('10:00'),
        item: undefined,
      } as never),
    ).toMatchObject({ ok: false });
    if (step !== undefined) {
      const item = step.items.find(({ kind }) => kind === 'confirm');
      if (item !== undefined) {
        await open(step.key);
        expect(
          await transcribe({ stepKey: step.key, itemKey: item.key }, answer('10:00'), office.helperId),
        ).toMatchObject({
          ok: false,
          error: { code: 'needs-licence' },
        });
      }
    }
  });
});
