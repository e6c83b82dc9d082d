/** The whole job through the operations: booked, walked from what was written down, finished, sealed. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { crc32, deflateSync } from 'node:zlib';
import { NEEDS_INSTRUMENT } from '../../domain/judgement/quantityGroups.ts';
import type { RunProgress } from '../../domain/procedure/progressTypes.ts';
import type { Core } from '../../electron/core.ts';
import { type RecordedRun, recordedRun } from '../../electron/demo/recordedRun.ts';
import { replayRun } from '../../electron/demo/replayRun.ts';
import { type Office, PIN } from './officeScenario.ts';
import { APP_ROOT, type TestCore } from './testCore.ts';

export type BookedRun = { readonly visitId: string; readonly runId: string; readonly jobId: string };

export function readStartupNotes(): RecordedRun {
  return recordedRun.parse(JSON.parse(readFileSync(join(APP_ROOT, 'tests/support/startupNotes.json'), 'utf8')));
}

export async function bookAndBegin(test: Pick<TestCore, 'must' | 'now'>, office: Office): Promise<BookedRun> {
  const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'startup', note: null });
  for (const item of (await test.must('jobs.getReadiness', { jobId })).items) {
    await test.must('jobs.setReadiness', {
      jobId,
      itemKey: item.itemKey,
      answer: 'yes',
      note: null,
      confirmedBy: 'builder',
    });
  }
  const { visitId } = await test.must('visits.book', {
    jobIds: [jobId],
    plannedOn: test.now().slice(0, 10),
    plannedFrom: '09:00',
    plannedTo: '12:00',
    durationMin: 180,
    crew: [{ staffId: office.technicianId, role: 'licensed' }],
    isPencilled: false,
    note: null,
  });
  await test.must('session.signIn', { staffId: office.technicianId, pin: PIN });
  const { runs } = await test.must('visits.begin', { visitId });
  const runId = runs[0]?.runId;
  if (runId === undefined) throw new Error('no run was begun');
  return { visitId, runId, jobId };
}

export async function walkRun(
  test: Pick<TestCore, 'must' | 'now' | 'wait'> & { readonly core: Pick<Core, 'putFile'> },
  office: Office,
  at: BookedRun,
  notes: RecordedRun,
  /** As far as here and no further; null: to the end. */
  untilItemKey: string | null = null,
): Promise<RunProgress> {
  return replayRun(
    notes,
    { visitId: at.visitId, runId: at.runId },
    {
      must: test.must,
      now: test.now,
      wait: test.wait,
      instrumentFor: (quantity) => (NEEDS_INSTRUMENT.has(quantity) ? office.analyserId : null),
      async putPhoto(fileName) {
        const reply = await test.core.putFile(
          { bytes: tinyPng(fileName), mediaType: 'image/png', fileName, takenAt: test.now() },
          'test-window',
        );
        if (!reply.ok) throw new Error(reply.code);
        return reply.attachmentId;
      },
    },
    untilItemKey,
  );
}

/** A valid picture of one pixel whose colour depends on its name. */
export function tinyPng(name: string): Uint8Array {
  const grey = [...name].reduce((sum, letter) => (sum + (letter.codePointAt(0) ?? 0)) % 256, 0);
  const chunk = (type: string, data: Buffer): Buffer => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const out = Buffer.alloc(body.length + 8);
    out.writeUInt32BE(data.length, 0);
    body.copy(out, 4);
    out.writeUInt32BE(crc32(body), body.length + 4);
    return out;
  };
  const header = Buffer.from([0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0]);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(Buffer.from([0, grey]))),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}
