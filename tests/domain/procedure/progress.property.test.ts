import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../domain/judgement/finding.ts';
import { BLOCKS, type ModelSheet } from '../../../domain/procedure/modelSheet.ts';
import { parseModelSheet } from '../../../domain/procedure/parseModelSheet.ts';
import { runProgress } from '../../../domain/procedure/progress.ts';
import type { RunProgress } from '../../../domain/procedure/progressTypes.ts';
import type { RunRecord } from '../../../domain/procedure/runRecord.ts';
import { aFinding } from '../../support/aFinding.ts';
import { driveRun, getItem } from '../../support/driveRun.ts';
import {
  DAY_START,
  emptyRecord,
  reading,
  secondsAfter,
  withAcceptableEntry,
  withAnswer,
} from '../../support/runRecordBuilder.ts';
import { sheetArbitrary, sheetFileArbitrary } from '../../support/sheetArbitrary.ts';

describe('random sheets', { timeout: 60_000 }, () => {
  it('are mostly valid: a generator that throws nearly everything away would prove little', () => {
    const files = fc.sample(sheetFileArbitrary, { numRuns: 300, seed: 7 });
    const problems = files.flatMap((file) => {
      const parsed = parseModelSheet(file);
      return parsed.ok ? [] : [parsed.error[0]?.message ?? ''];
    });
    expect(problems.length).toBeLessThan(200);
    // The only thing wrong with any of them is a hold point that waits for itself.
    expect(problems.filter((message) => !message.includes('could never open'))).toEqual([]);
  });

  it('run to all gates clear when every question gets an acceptable answer', () => {
    fc.assert(
      fc.property(sheetArbitrary, (sheet) => {
        const { progress } = driveRun(sheet, 'startup', startOf(sheet), (state, record) => {
          expectFiringHeld(sheet, state, record);
        });
        expect(progress.gates).toEqual({ firing: [], leaving: [], registration: [] });
        expect(progress.steps.filter((step) => step.state !== 'done')).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  it('never let a firing step stand open while something blocks firing, whatever is done in whatever order', () => {
    fc.assert(
      fc.property(sheetArbitrary, fc.array(actArbitrary, { maxLength: 40 }), (sheet, acts) => {
        let state: State = { record: startOf(sheet), findings: [], now: DAY_START, reopenedAt: null, releasedAt: null };
        for (const act of acts) {
          state = doAct(act, state, sheet);
          expectFiringHeld(sheet, progressOf(state, sheet), state.record);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('say the same of the same record, and change nothing in it', () => {
    fc.assert(
      fc.property(sheetArbitrary, fc.array(actArbitrary, { maxLength: 20 }), (sheet, acts) => {
        const start: State = {
          record: startOf(sheet),
          findings: [],
          now: DAY_START,
          reopenedAt: null,
          releasedAt: null,
        };
        const state = acts.reduce((one, act) => doAct(act, one, sheet), start);
        const before = JSON.stringify(state);
        const first = progressOf(state, sheet);
        expect(progressOf(JSON.parse(before) as State, sheet)).toEqual(first);
        expect(JSON.stringify(state)).toBe(before);
      }),
      { numRuns: 100 },
    );
  });
});

type State = {
  readonly record: RunRecord;
  readonly findings: readonly Finding[];
  readonly now: string;
  readonly reopenedAt: string | null;
  readonly releasedAt: string | null;
};

type Act = { readonly kind: string; readonly at: number; readonly pick: number };

const actArbitrary: fc.Arbitrary<Act> = fc.record({
  kind: fc.constantFrom(
    'fill',
    'fill',
    'fill',
    'fill-any',
    'no',
    'not-possible',
    'stop-finding',
    'outside-finding',
    'clock-jump',
    'interrupt',
    'make-safe',
    'close-make-safe',
    'reopen',
    'wait',
  ),
  at: fc.nat({ max: 200_000 }),
  pick: fc.nat({ max: 200 }),
});

function startOf(sheet: ModelSheet): RunRecord {
  const fuel = sheet.fuels[0]?.fuel;
  if (fuel === undefined) throw new Error('a sheet without fuel');
  return emptyRecord(fuel);
}

function progressOf(state: State, sheet: ModelSheet): RunProgress {
  return runProgress({
    sheet,
    steps: 'startup',
    record: state.record,
    findings: state.findings,
    reopenedAt: state.reopenedAt,
    firingReleasedAt: state.releasedAt,
    now: state.now,
  });
}

function doAct(act: Act, state: State, sheet: ModelSheet): State {
  const items = sheet.startup.flatMap((step) => step.items);
  const item = items[act.pick % items.length];
  if (item === undefined) throw new Error('a sheet without items');
  const { record, now } = state;
  const later = secondsAfter(now, 30);
  switch (act.kind) {
    case 'fill': {
      const next = progressOf(state, sheet).nextItem;
      if (next === null) return state;
      return filled(state, sheet, next.itemKey, later);
    }
    case 'fill-any':
      return filled(state, sheet, item.key, later);
    case 'no':
      return { ...state, record: withAnswer(record, item.key, 'no', later), now: later };
    case 'not-possible':
      return { ...state, record: withAnswer(record, item.key, null, later, { reason: 'cannot' }), now: later };
    case 'stop-finding':
    case 'outside-finding': {
      const one = reading(item.key, 'coPpm', 900, later);
      const verdict = act.kind === 'stop-finding' ? 'stop' : 'outside';
      const finding = aFinding({ readingId: one.readingId, verdict, blocks: BLOCKS.slice(act.pick % 3) });
      return {
        ...state,
        record: { ...record, readings: [...record.readings, one] },
        findings: [...state.findings, finding],
        now: later,
      };
    }
    case 'clock-jump':
      return { ...state, record: { ...record, holds: record.holds.map((hold) => ({ ...hold, clockJumped: true })) } };
    case 'interrupt':
      return {
        ...state,
        record: { ...record, tunings: record.tunings.map((run) => ({ ...run, interruptedAt: later })) },
      };
    case 'make-safe':
      return { ...state, record: { ...record, openMakeSafes: record.openMakeSafes + 1 } };
    case 'close-make-safe':
      return { ...state, record: { ...record, openMakeSafes: 0 }, releasedAt: later, now: later };
    case 'reopen':
      return { ...state, now: secondsAfter(now, act.at), reopenedAt: secondsAfter(now, act.at) };
    default:
      return { ...state, now: secondsAfter(now, act.at) };
  }
}

function filled(state: State, sheet: ModelSheet, itemKey: string, at: string): State {
  return { ...state, record: withAcceptableEntry(state.record, getItem(sheet, 'startup', itemKey), at), now: at };
}

/** Said twice: by the engine's own gate, and by looking straight into the record for what is plainly missing. */
function expectFiringHeld(sheet: ModelSheet, progress: RunProgress, record: RunRecord): void {
  const open = progress.steps.filter(
    (step) => step.state === 'open' && sheet.startup.find((one) => one.key === step.stepKey)?.needsClear === 'firing',
  );
  if (open.length === 0) return;
  expect(progress.gates.firing).toEqual([]);
  expect(record.openMakeSafes).toBe(0);
  const shown = new Set(progress.steps.flatMap((step) => step.items.map((item) => item.itemKey)));
  const untouched = sheet.startup
    .flatMap((step) => step.items)
    .filter((item) => item.blocks.includes('firing') && shown.has(item.key) && !hasAnything(record, item.key));
  expect(untouched.map((item) => item.key)).toEqual([]);
  const refused = sheet.startup
    .flatMap((step) => step.items)
    .filter((item) => item.kind === 'confirm' && item.blocks.includes('firing') && shown.has(item.key))
    .filter((item) => record.answers.some((one) => one.itemKey === item.key && one.value === 'no'));
  expect(refused.map((item) => item.key)).toEqual([]);
}

function hasAnything(record: RunRecord, itemKey: string): boolean {
  return [
    ...record.answers,
    ...record.readings,
    ...record.holds,
    ...record.tunings,
    ...record.photos,
    ...record.signOffs,
  ].some((one) => one.itemKey === itemKey);
}
