/**
 * The demo without a window: a fresh demo store, one startup run from its recorded readings through the same operations as
 * the screens, and its packet, record and ZIP written to a folder.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { InputOf, OperationName, OutputOf } from '../contract/index.ts';
import type { Core } from '../core.ts';
import { createCore } from '../createCore.ts';
import { DEMO_PIN } from './demoStore.ts';
import { instrumentAtHand } from './instrumentAtHand.ts';
import { moveDays } from './moveDays.ts';
import { recordedRun } from './recordedRun.ts';
import { replayRun } from './replayRun.ts';

export type DemoFiles = {
  readonly packet: string;
  readonly record: string;
  readonly zip: string;
  readonly sha256: string;
};

const CLIENT = 'command-line';

export async function runDemo(options: {
  readonly out: string;
  readonly dataFolder: string;
  readonly appRoot: string;
  readonly now: string;
}): Promise<DemoFiles> {
  const written = recordedRun.parse(
    JSON.parse(readFileSync(join(options.appRoot, 'assets/demo/startup-run.json'), 'utf8')),
  );
  let ms = msOfVisit(written.startedAt, options.now);
  const now = (): string => new Date(ms).toISOString();
  const core = createCore({
    dataFolder: options.dataFolder,
    appRoot: options.appRoot,
    clock: now,
    steadyClockMs: () => ms,
    startInDemo: true,
  });
  try {
    const must = mustOf(core);
    const notes = moveDays(written, written.startedAt, now());
    const { people } = await must('app.status', {});
    const technician = people.find((person) => person.name === notes.signOffs['licensed-signs']);
    const owner = people.find((person) => person.roles.includes('owner'));
    if (technician === undefined || owner === undefined) throw new Error('the demo lacks its people');
    await must('session.signIn', { staffId: technician.staffId, pin: DEMO_PIN });
    const { visitId, applianceId } = await findVisit(must, notes.serial);
    const { runs } = await must('visits.begin', { visitId });
    const runId = runs[0]?.runId;
    if (runId === undefined) throw new Error('no run was begun');
    const instruments = await must('instruments.list', {});
    await replayRun(
      notes,
      { visitId, runId },
      {
        must,
        now,
        wait: (seconds) => {
          ms += seconds * 1000;
        },
        instrumentFor: (quantity) => instrumentAtHand(quantity, instruments, technician.staffId),
        putPhoto: (fileName) => putPhoto(core, options.appRoot, fileName, now()),
      },
    );
    await must('visits.finish', { visitId, outcome: 'finished', reason: null, labourMin: 210 });
    await must('visits.seal', { visitId, runId });
    await must('session.signIn', { staffId: owner.staffId, pin: DEMO_PIN });
    await must('registrations.decide', {
      applianceId,
      by: 'office',
      ownerConsentOn: now().slice(0, 10),
      followUpOn: null,
    });
    const { gaps } = await must('packets.check', { runId });
    const built = await must('packets.build', {
      runId,
      isDraft: false,
      gapReason: gaps.length === 0 ? null : 'demo packet: the gaps are listed in it',
    });
    mkdirSync(options.out, { recursive: true });
    return {
      packet: await save(core, built.packetPdfId, options.out),
      record: await save(core, built.recordJsonId, options.out),
      zip: await save(core, built.packetZipId, options.out),
      sha256: built.sha256,
    };
  } finally {
    core.close();
  }
}

/** In the morning as it was written down: today's, or yesterday's while today's is still ahead. */
function msOfVisit(writtenAt: string, now: string): number {
  const today = Date.parse(moveDays(writtenAt, writtenAt, now));
  return today <= Date.parse(now) ? today : today - 86_400_000;
}

type Must = <N extends OperationName>(name: N, input: InputOf<N>) => Promise<OutputOf<N>>;

function mustOf(core: Core): Must {
  return async (name, input) => {
    const reply = await core.call(name, input, CLIENT);
    if (!reply.ok) throw new Error(`${name}: ${JSON.stringify(reply.error)}`);
    return reply.value as never;
  };
}

async function findVisit(
  must: Must,
  serial: string,
): Promise<{ readonly visitId: string; readonly applianceId: string }> {
  const { rows } = await must('appliances.list', { query: serial });
  const applianceId = rows.find((row) => row.serial === serial)?.applianceId;
  if (applianceId === undefined) throw new Error(`no appliance ${serial} in the demo`);
  const { visits } = await must('appliances.get', { applianceId });
  const booked = visits.find((visit) => visit.state === 'planned');
  if (booked === undefined) throw new Error(`no startup of ${serial} is booked`);
  return { visitId: booked.visitId, applianceId };
}

async function putPhoto(core: Core, appRoot: string, fileName: string, takenAt: string): Promise<string> {
  const bytes = readFileSync(join(appRoot, 'assets/demo/photos', fileName));
  const reply = await core.putFile({ bytes, mediaType: 'image/png', fileName, takenAt }, CLIENT);
  if (!reply.ok) throw new Error(`${fileName}: ${reply.code}`);
  return reply.attachmentId;
}

async function save(core: Core, attachmentId: string, out: string): Promise<string> {
  const file = await core.getFile(attachmentId, CLIENT);
  if (file === null) throw new Error(`attachment ${attachmentId} is missing`);
  const path = join(out, basename(file.fileName));
  writeFileSync(path, file.bytes);
  return path;
}
