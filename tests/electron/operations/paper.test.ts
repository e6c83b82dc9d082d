import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { isFromPaper } from '../../../domain/procedure/isFromPaper.ts';
import { COPIED_ANSWER } from '../../../domain/procedure/progress/listProgress.ts';
import { entryUnits } from '../../../domain/quantity/entryUnits.ts';
import type { InputOf } from '../../../electron/contract/index.ts';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { readPdf } from '../../support/readPdf.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { type BookedRun, bookAndBegin, readStartupNotes, tinyPng, walkRun } from '../../support/wholeJob.ts';

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

  const technician = 'Tobias Reyle';
  const signatureId = async () => {
    const reply = await test.core.putFile(
      { bytes: tinyPng('signature'), mediaType: 'image/png', fileName: 'signature.png', takenAt: null },
      'test-window',
    );
    if (!reply.ok) throw new Error(reply.code);
    return reply.attachmentId;
  };

  it('does not put one person’s name on the licence of another', async () => {
    const signed = await firstItem('sign-off');
    expect(signed.item).toMatchObject({ by: 'licensed' });
    await open(signed.stepKey);
    expect(await transcribe(signed, { kind: 'sign-off', name: 'Somebody Else', at: '13:10' })).toMatchObject({
      ok: false,
      error: { code: 'signed-by-another', data: { written: 'Somebody Else', name: technician } },
    });
    expect((await view()).record.signOffs).toEqual([]);
    expect(await transcribe(signed, { kind: 'sign-off', name: 'tobias  reyle', at: '13:10' })).toMatchObject({
      ok: true,
    });
    expect((await view()).record.signOffs).toMatchObject([{ name: technician, staffId: office.technicianId }]);
  });

  it('leaves the drawing under a name that is signed anew by the same person, and marks it', async () => {
    const signed = await firstItem('sign-off');
    await open(signed.stepKey);
    const here = { visitId: run.visitId, runId: run.runId, stepKey: signed.stepKey, itemKey: signed.itemKey };
    await test.must('visits.signOff', { ...here, name: technician, signatureAttachmentId: await signatureId() });
    expect(await transcribe(signed, { kind: 'sign-off', name: technician, at: '13:10' })).toMatchObject({ ok: true });
    const [signOff] = (await view()).record.signOffs;
    expect(signOff).toMatchObject({ name: technician, transcribed: { typedAt: test.now() } });
    expect(signOff?.signatureSha256).toMatch(/^[0-9a-f]{64}$/);
  });

  it('leaves no drawing of the person before under another name', async () => {
    await walkRun(test, office, run, readStartupNotes(), 'occupant-signs');
    const { sheet } = await view();
    const step = sheet.startup.find(({ items }) => items.some(({ key }) => key === 'occupant-signs'));
    const signed = { stepKey: step?.key ?? '', itemKey: 'occupant-signs' };
    await open(signed.stepKey);
    const here = { visitId: run.visitId, runId: run.runId, ...signed };
    await test.must('visits.signOff', {
      ...here,
      name: 'Ines Varga',
      signatureAttachmentId: await signatureId(),
    });
    const ofOccupant = async () => (await view()).record.signOffs.find(({ by }) => by === 'occupant');
    expect((await ofOccupant())?.signatureSha256).toMatch(/^[0-9a-f]{64}$/);
    expect(await transcribe(signed, { kind: 'sign-off', name: 'Olm Varga', at: '13:10' })).toMatchObject({ ok: true });
    expect(await ofOccupant()).toMatchObject({ name: 'Olm Varga', transcribed: { typedAt: test.now() } });
    expect((await ofOccupant())?.signatureSha256).toBeUndefined();
  });
});

describe('paper of a repair', () => {
  const READ: Readonly<Record<string, readonly [string, string]>> = {
    'room-co': ['0', 'ppm'],
    'outdoor-now': ['-3', '°C'],
    'service-cold-pressure': ['1.2', 'bar'],
    'relief-setting': ['3', 'bar'],
    'inlet-static': ['20', 'mbar'],
  };
  const SAID: Readonly<Record<string, string>> = { serial: 'TK204411' };
  let test: TestCore;
  let office: Office;
  let at: { readonly visitId: string; readonly runId: string };
  const view = () => test.must('visits.getRun', at);
  const transcribe = (stepKey: string, itemKey: string, written: Written) =>
    test.ask('paper.transcribe', { ...at, stepKey, itemKey, on: '2026-03-02', byId: office.technicianId, written });

  /** Every line of a step, as it would be written at an appliance where nothing is wrong. */
  async function copyStep(stepKey: string): Promise<void> {
    await test.must('visits.openStep', { ...at, stepKey });
    const { sheet } = await view();
    for (const item of sheet.repair?.find(({ key }) => key === stepKey)?.items ?? []) {
      if (item.onlyFor?.foundOutside !== undefined) continue;
      const reading = READ[item.key];
      const said = SAID[item.key] ?? (item.kind === 'choose' ? item.options[0]?.value : 'yes') ?? '';
      const written: Written | null =
        item.kind === 'read' && reading !== undefined
          ? {
              kind: 'reading',
              quantity: item.quantity,
              sample: 1,
              typedText: reading[0],
              typedUnit: reading[1],
              notMeasuredReason: null,
              instrumentId: office.analyserId,
              at: '13:00',
            }
          : item.kind === 'sign-off'
            ? { kind: 'sign-off', name: 'Tobias Reyle', at: '13:00' }
            : item.kind === 'lockouts' || item.kind === 'parts'
              ? null
              : { kind: 'answer', value: said, reason: null, at: '13:00' };
      if (written !== null) expect(await transcribe(stepKey, item.key, written)).toMatchObject({ ok: true });
    }
  }

  beforeEach(async () => {
    test = openTestCore('2026-03-02T18:00:00.000Z');
    office = await setUpOffice(test, { appliance: { serial: 'TK204411' } });
    const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'repair', note: null });
    const { visitId } = await test.must('visits.book', {
      jobIds: [jobId],
      plannedOn: '2026-03-02',
      plannedFrom: '09:00',
      plannedTo: '12:00',
      durationMin: 120,
      crew: [{ staffId: office.technicianId, role: 'licensed' }],
      isPencilled: false,
      note: null,
    });
    await test.must('session.signIn', { staffId: office.technicianId, pin: PIN });
    const { runs } = await test.must('visits.begin', { visitId });
    at = { visitId, runId: runs[0]?.runId ?? '' };
    await copyStep('arrival');
  });
  afterEach(() => test.remove());

  it('takes in lockouts and parts: who wrote them and when, who typed them, marked in the record and counted as listed', async () => {
    await copyStep('fault');
    const lockout = {
      kind: 'lockout',
      happenedOn: '2026-02-26',
      happenedAt: '07:20',
      code: 'E5',
      outdoorText: '-3',
      outdoorUnit: '°F',
      at: '13:05',
    } as const;
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    expect(await transcribe('fault', 'lockout-list', lockout)).toMatchObject({ ok: true });
    await copyStep('before-firing');
    await test.must('visits.openStep', { ...at, stepKey: 'repair-work' });
    const { sheet } = await view();
    const partKey = sheet.parts?.find(({ needsTuning }) => needsTuning)?.key ?? '';
    const part = { kind: 'part', partKey, partNumber: 'GV-1001', serial: null, at: '13:20' } as const;
    expect(await transcribe('repair-work', 'parts-changed', part)).toMatchObject({ ok: true });
    const { record } = await view();
    // 07:20 in Halifax, four hours behind UTC; −3 °F is −19.4 °C.
    expect(record.lockouts).toMatchObject([
      { happenedAt: '2026-02-26T11:20:00Z', code: 'E5', outdoorTypedText: '-3', byId: office.technicianId },
    ]);
    expect(record.lockouts?.[0]?.outdoorC).toBeCloseTo(-19.44, 2);
    expect(record.parts).toMatchObject([
      { partKey, partNumber: 'GV-1001', byId: office.technicianId, at: '2026-03-02T17:20:00.000Z' },
    ]);
    expect(isFromPaper(record, 'lockout-list')).toBe(true);
    expect(record.answers.find(({ itemKey }) => itemKey === 'parts-changed')).toMatchObject({
      value: COPIED_ANSWER,
      byId: office.technicianId,
      transcribed: { typedById: office.ownerId, typedAt: test.now() },
    });
    expect(record.answers.find(({ itemKey }) => itemKey === 'parts-changed')?.reason).toContain('GV-1001');
  });

  it('does not go on listing as copied from paper what was taken away again, once it is sealed', async () => {
    await copyStep('fault');
    const lockout = (code: string) =>
      transcribe('fault', 'lockout-list', {
        kind: 'lockout',
        happenedOn: '2026-02-26',
        happenedAt: '07:20',
        code,
        outdoorText: null,
        outdoorUnit: '°C',
        at: '13:05',
      });
    expect(await lockout('E5')).toMatchObject({ ok: true });
    expect(await lockout('E77')).toMatchObject({ ok: true });
    await copyStep('before-firing');
    await test.must('visits.openStep', { ...at, stepKey: 'repair-work' });
    const partKey = (await view()).sheet.parts?.[0]?.key ?? '';
    for (const partNumber of ['Q1001', 'Q2002'])
      expect(
        await transcribe('repair-work', 'parts-changed', {
          kind: 'part',
          partKey,
          partNumber,
          serial: null,
          at: '13:20',
        }),
      ).toMatchObject({ ok: true });
    const { record } = await view();
    const partId = record.parts?.find(({ partNumber }) => partNumber === 'Q2002')?.rowId ?? '';
    const lockoutId = record.lockouts?.find(({ code }) => code === 'E77')?.rowId ?? '';
    await test.must('visits.removeRow', {
      ...at,
      stepKey: 'repair-work',
      itemKey: 'parts-changed',
      rowId: partId,
    });
    await test.must('visits.removeRow', { ...at, stepKey: 'fault', itemKey: 'lockout-list', rowId: lockoutId });
    await test.must('visits.finish', {
      visitId: at.visitId,
      outcome: 'return-needed',
      reason: 'part on order',
      labourMin: 60,
    });
    await test.must('visits.seal', at);
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    const { packetPdfId } = await test.must('packets.build', { runId: at.runId, isDraft: false, gapReason: 'test' });
    const file = await test.core.getFile(packetPdfId, 'test-window');
    const text = (await readPdf(file?.bytes ?? new Uint8Array())).pages.join(' ').replaceAll(/\s+/g, '');
    const fromPaper = text.slice(text.indexOf('Copiedfrompaper'));
    expect(fromPaper).toContain('Q1001');
    expect(fromPaper).toContain('E5');
    expect(text).not.toContain('Q2002');
    expect(text).not.toContain('E77');
    const marks = (await view()).record.answers.filter(({ value }) => value === COPIED_ANSWER);
    expect(marks).toHaveLength(2);
  });

  it('refuses a part the sheet does not list and a lockout that is still to come, and keeps nothing of them', async () => {
    await copyStep('fault');
    const tomorrow = {
      happenedOn: '2026-03-03',
      happenedAt: '07:20',
      code: null,
      outdoorText: null,
      outdoorUnit: '°C',
    };
    expect(await transcribe('fault', 'lockout-list', { kind: 'lockout', ...tomorrow, at: '13:05' })).toMatchObject({
      ok: false,
      error: { code: 'day-in-future' },
    });
    await copyStep('before-firing');
    // A list without a line is not answered: the step before would otherwise still be open.
    expect(
      await transcribe('fault', 'lockout-list', { kind: 'answer', value: 'none', reason: null, at: '13:05' }),
    ).toMatchObject({ ok: true });
    await test.must('visits.openStep', { ...at, stepKey: 'repair-work' });
    expect(
      await transcribe('repair-work', 'parts-changed', {
        kind: 'part',
        partKey: 'no-such-thing',
        partNumber: '1',
        serial: null,
        at: '13:20',
      }),
    ).toMatchObject({ ok: false, error: { code: 'no-such-part' } });
    const { record } = await view();
    expect([record.parts, record.lockouts]).toEqual([[], []]);
    expect(record.answers.filter(({ value }) => value === COPIED_ANSWER)).toEqual([]);
  });
});
