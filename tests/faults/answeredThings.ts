/** Looks each thing that a walker was answered up in the store: what was said to be saved is there, as it was said. */
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect } from 'vitest';
import { openAttachmentFiles } from '../../db/attachmentFiles.ts';
import { storePath } from '../../db/openStore.ts';

export type AnsweredThing = {
  readonly name: string;
  readonly input?: Readonly<Record<string, unknown>>;
  readonly value: Readonly<Record<string, unknown>>;
};

/** Of the lines `done JSON`. */
export function answeredThings(lines: readonly string[]): readonly AnsweredThing[] {
  return lines.filter((line) => line.startsWith('done ')).map((line) => JSON.parse(line.slice(5)) as AnsweredThing);
}

/** One row at least, by the operation; the parameters are named as in its input and answer. */
const FOUND_BY: Readonly<Record<string, string>> = {
  'visits.openStep': 'run_steps WHERE run_id = @runId AND step_key = @stepKey',
  'visits.answer':
    'run_answers WHERE run_id = @runId AND item_key = @itemKey AND value IS @value AND reason IS @reason',
  'visits.recordReading': 'readings WHERE id = @readingId AND item_key = @itemKey AND typed_text = @typedText',
  'visits.startHold': 'run_holds WHERE run_id = @runId AND item_key = @itemKey AND started_at = @startedAt',
  'visits.endHold': 'run_holds WHERE run_id = @runId AND item_key = @itemKey AND ended_at IS NOT NULL',
  'visits.startTuning': 'run_tunings WHERE run_id = @runId AND item_key = @itemKey AND started_at = @startedAt',
  'visits.reachTuningStage':
    'tuning_stages JOIN run_tunings ON tuning_id = run_tunings.id WHERE run_id = @runId AND item_key = @itemKey AND stage_key = @stageKey',
  'visits.finishTuning': 'run_tunings WHERE run_id = @runId AND item_key = @itemKey AND finished_at IS NOT NULL',
  'visits.reachFiringPoint':
    'firing_point_marks WHERE run_id = @runId AND firing_point = @firingPoint AND reached_at = @reachedAt',
  'visits.attachPhoto':
    "attachment_links WHERE entity = 'runs' AND entity_id = @runId AND item_key = @itemKey AND attachment_id = @attachmentId",
  'visits.signOff': 'sign_offs WHERE run_id = @runId AND item_key = @itemKey AND name = @name',
  'visits.finish': 'visits WHERE id = @visitId AND outcome = @outcome',
  'visits.seal': 'seals WHERE run_id = @runId',
  file: 'attachments WHERE id = @attachmentId AND sha256 = @sha256',
};

export const LOOKED_UP: readonly string[] = Object.keys(FOUND_BY);

/** Tables of a run whose every row has its line in the change log, or neither is there. */
const LOGGED = [
  'run_steps',
  'run_answers',
  'readings',
  'run_holds',
  'run_tunings',
  'tuning_stages',
  'firing_point_marks',
  'sign_offs',
  'attachments',
  'attachment_links',
  'seals',
];

export function expectAnsweredThings(folder: string, things: readonly AnsweredThing[]): void {
  const raw = new Database(storePath(folder));
  try {
    expect(raw.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(raw.pragma('foreign_key_check')).toEqual([]);
    const files = openAttachmentFiles(join(folder, 'attachments'));
    for (const { name, input, value } of things) {
      const where = FOUND_BY[name];
      if (where === undefined) continue;
      const found = raw
        .prepare(`SELECT count(*) FROM ${where}`)
        .pluck()
        .get({ ...input, ...value });
      expect(found, JSON.stringify({ name, input, value })).toBeGreaterThanOrEqual(1);
      if (name === 'file') expect(files.get(String(value['sha256']))).not.toBeNull();
    }
    for (const table of LOGGED) {
      const unlogged = `SELECT count(*) FROM ${table} WHERE id NOT IN (SELECT entity_id FROM op WHERE entity = '${table}')`;
      expect(raw.prepare(unlogged).pluck().get(), table).toBe(0);
    }
  } finally {
    raw.close();
  }
}
