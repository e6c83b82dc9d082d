import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../domain/judgement/finding.ts';
import type { ModelSheet } from '../../../domain/procedure/modelSheet.ts';
import { ADVICE_ANSWER } from '../../../domain/procedure/progress/findingsByItem.ts';
import { runProgress } from '../../../domain/procedure/progress.ts';
import type { ItemProgress, RunProgress, RunProgressInput } from '../../../domain/procedure/progressTypes.ts';
import type { RunRecord } from '../../../domain/procedure/runRecord.ts';
import { aFinding } from '../../support/aFinding.ts';
import {
  DAY_START,
  emptyRecord,
  reading,
  secondsAfter,
  TECHNICIAN_ID,
  withAnswer,
  withReading,
} from '../../support/runRecordBuilder.ts';
import { A_BASIS, anItem, aStep, tinySheet } from '../../support/tinySheet.ts';

const blank = emptyRecord('natural-gas');

function progressOf(sheet: ModelSheet, record: RunRecord, more: Partial<RunProgressInput> = {}): RunProgress {
  return runProgress({ sheet, steps: 'startup', record, findings: [], now: DAY_START, ...more });
}

function itemOf(progress: RunProgress, itemKey: string): ItemProgress {
  const item = progress.steps.flatMap((step) => step.items).find((one) => one.itemKey === itemKey);
  if (item === undefined) throw new Error(`"${itemKey}" is not shown`);
  return item;
}

function blockedItems(progress: RunProgress, gate: 'firing' | 'leaving' | 'registration'): readonly (string | null)[] {
  return progress.gates[gate].map((blocker) => blocker.itemKey);
}

describe('a hold point', () => {
  const sheet = tinySheet([
    aStep('before', [anItem('confirm', 'tight', { blocks: ['firing'] }), anItem('confirm', 'nice-to-have')]),
    aStep('fire', [anItem('confirm', 'lit', { blocks: ['leaving'] })], { needsClear: 'firing' }),
    aStep('sign', [anItem('sign-off', 'signed', { blocks: ['leaving'], by: 'licensed', mayBeNotPossible: false })], {
      needsClear: 'leaving',
    }),
  ]);

  it('names what keeps it shut, and opens when that is answered', () => {
    const shut = progressOf(sheet, blank);
    expect(shut.steps.map((step) => step.state)).toEqual(['open', 'locked', 'locked']);
    expect(shut.steps[1]?.lockedBecause).toEqual([
      {
        code: 'hold-point',
        block: 'firing',
        blockers: [{ stepKey: 'before', itemKey: 'tight', because: [{ code: 'not-answered' }] }],
      },
    ]);
    const open = progressOf(sheet, withAnswer(blank, 'tight', 'yes', DAY_START));
    expect(open.steps.map((step) => step.state)).toEqual(['open', 'open', 'locked']);
    expect(open.gates.firing).toEqual([]);
  });

  it('is not kept shut by what stands behind it', () => {
    const lit = withAnswer(withAnswer(blank, 'tight', 'yes', DAY_START), 'lit', 'yes', DAY_START);
    const progress = progressOf(sheet, lit);
    expect(blockedItems(progress, 'leaving')).toEqual(['signed']);
    expect(progress.steps[2]?.state).toBe('open');
  });

  it('stays shut on a "no"', () => {
    const progress = progressOf(sheet, withAnswer(blank, 'tight', 'no', DAY_START));
    expect(itemOf(progress, 'tight')).toMatchObject({
      state: 'blocked-by-finding',
      because: [{ code: 'answered-no' }],
      blocks: ['firing'],
    });
    expect(progress.steps[1]?.state).toBe('locked');
  });

  it('lets a "no" pass that blocks nothing', () => {
    expect(itemOf(progressOf(sheet, withAnswer(blank, 'nice-to-have', 'no', DAY_START)), 'nice-to-have').state).toBe(
      'answered',
    );
  });

  it('is shut by an open make-safe, whatever has been answered', () => {
    const answered = withAnswer(blank, 'tight', 'yes', DAY_START);
    const progress = progressOf(sheet, { ...answered, openMakeSafes: 2 });
    const blocker = { stepKey: null, itemKey: null, because: [{ code: 'open-make-safe', count: 2 }] };
    expect(progress.gates.firing).toEqual([blocker]);
    expect(progress.gates.leaving).toContainEqual(blocker);
    expect(progress.gates.registration).toContainEqual(blocker);
    expect(progress.steps[1]?.state).toBe('locked');
  });

  it('shuts again behind a step that is done, which stays done', () => {
    const lit = withAnswer(withAnswer(blank, 'tight', 'yes', DAY_START), 'lit', 'yes', DAY_START);
    const progress = progressOf(sheet, { ...lit, openMakeSafes: 1 });
    expect(progress.steps[1]).toMatchObject({ state: 'done', lockedBecause: [{ code: 'hold-point' }] });
  });
});

describe('the order of steps and items', () => {
  const sheet = tinySheet([
    aStep('fill', [anItem('read', 'cold', { quantity: 'systemPressureBarG', blocks: ['firing'] })]),
    aStep('purge', [anItem('hold', 'de-air', { seconds: 60, basis: A_BASIS }), anItem('confirm', 'bled')], {
      after: ['fill'],
    }),
    aStep('elsewhere', [anItem('confirm', 'anything')]),
  ]);

  it('a step waits for the steps that come first, and says which items are open', () => {
    expect(progressOf(sheet, blank).steps[1]).toMatchObject({
      state: 'locked',
      lockedBecause: [{ code: 'step-first', stepKey: 'fill', itemKeys: ['cold'] }],
    });
  });

  it('what follows a wait in its step waits; Enter goes on elsewhere and comes back', () => {
    const filled = withReading(blank, reading('cold', 'systemPressureBarG', 1.2, DAY_START));
    expect(progressOf(sheet, filled).nextItem).toEqual({ stepKey: 'purge', itemKey: 'de-air' });
    const running = withHold(filled, { startedAt: DAY_START, requiredS: 60 });
    const during = progressOf(sheet, running, { now: secondsAfter(DAY_START, 20) });
    expect(itemOf(during, 'bled')).toMatchObject({
      state: 'waiting',
      because: [{ code: 'waits-for', itemKey: 'de-air' }],
    });
    expect(during.nextItem).toEqual({ stepKey: 'elsewhere', itemKey: 'anything' });
    const elsewhereDone = withAnswer(running, 'anything', 'yes', DAY_START);
    expect(progressOf(sheet, elsewhereDone, { now: secondsAfter(DAY_START, 20) }).nextItem?.itemKey).toBe('de-air');
    expect(progressOf(sheet, elsewhereDone, { now: secondsAfter(DAY_START, 60) }).nextItem?.itemKey).toBe('bled');
    const all = withAnswer(elsewhereDone, 'bled', 'yes', DAY_START);
    expect(progressOf(sheet, all, { now: secondsAfter(DAY_START, 60) }).nextItem).toBeNull();
  });

  it('a wait is not begun before what precedes it in its step', () => {
    const one = tinySheet([
      aStep('tune', [
        anItem('confirm', 'casing', { blocks: ['leaving'] }),
        anItem('hold', 'wait', { seconds: 9, basis: A_BASIS }),
      ]),
    ]);
    expect(itemOf(progressOf(one, blank), 'wait').because).toEqual([{ code: 'waits-for', itemKey: 'casing' }]);
    const refused = progressOf(one, withAnswer(blank, 'casing', 'no', DAY_START));
    expect(itemOf(refused, 'wait').state).toBe('waiting');
    expect(refused.nextItem?.itemKey).toBe('casing');
  });

  it('something that only the registration lacks holds nobody up', () => {
    const one = tinySheet([
      aStep('water', [anItem('read', 'ph', { quantity: 'waterPh', blocks: ['registration'] })]),
      aStep('next', [anItem('confirm', 'on')], { after: ['water'] }),
    ]);
    const ph = reading('ph', 'waterPh', 4, DAY_START);
    const findings = [aFinding({ readingId: ph.readingId, blocks: ['registration'] })];
    const progress = progressOf(one, withReading(blank, ph), { findings });
    expect(progress.steps.map((step) => step.state)).toEqual(['open', 'open']);
    expect(blockedItems(progress, 'registration')).toEqual(['ph']);
  });

  function withHold(record: RunRecord, hold: { readonly startedAt: string; readonly requiredS: number }): RunRecord {
    return { ...record, holds: [{ itemKey: 'de-air', endedAt: null, clockJumped: false, ...hold }] };
  }
});

describe('a hold', () => {
  const sheet = tinySheet([aStep('s', [anItem('hold', 'wait', { seconds: 600, basis: A_BASIS, blocks: ['firing'] })])]);
  const hold = { itemKey: 'wait', startedAt: DAY_START, requiredS: 600, endedAt: null, clockJumped: false };
  const at = (seconds: number, more: Partial<typeof hold> | { endedAt: string } = {}) =>
    itemOf(
      progressOf(sheet, { ...blank, holds: [{ ...hold, ...more }] }, { now: secondsAfter(DAY_START, seconds) }),
      'wait',
    );

  it('counts from its stored start, through a restart or a night asleep', () => {
    expect(at(250)).toMatchObject({ state: 'running', timer: { kind: 'hold', totalS: 600, secondsLeft: 350 } });
    expect(at(599.5)).toMatchObject({ state: 'running', timer: { secondsLeft: 1 } });
    expect(at(600).state).toBe('answered');
    expect(at(30_000).state).toBe('answered');
  });

  it('is run again when the clock jumped, or stands before the start', () => {
    expect(at(700, { clockJumped: true })).toMatchObject({
      state: 'open',
      because: [{ code: 'clock-jumped' }],
      blocks: ['firing'],
    });
    expect(at(-3600)).toMatchObject({ state: 'open', because: [{ code: 'clock-jumped' }] });
  });

  it('takes a screen that is a second behind for no moved clock', () => {
    expect(at(-1)).toMatchObject({ state: 'running', timer: { secondsLeft: 600 } });
  });

  it('is run again when it was ended early', () => {
    expect(at(900, { endedAt: secondsAfter(DAY_START, 420) }).because).toEqual([
      { code: 'hold-ended-early', ranS: 420, neededS: 600 },
    ]);
    expect(at(900, { endedAt: secondsAfter(DAY_START, 600) }).state).toBe('answered');
  });

  it('the newest run counts, and never less than the sheet asks', () => {
    const again = { ...hold, startedAt: secondsAfter(DAY_START, 1000) };
    const record = { ...blank, holds: [{ ...hold, clockJumped: true }, again] };
    expect(itemOf(progressOf(sheet, record, { now: secondsAfter(DAY_START, 1100) }), 'wait')).toMatchObject({
      state: 'running',
      timer: { secondsLeft: 500 },
    });
    expect(at(30, { requiredS: 10 })).toMatchObject({ state: 'running', timer: { secondsLeft: 570 } });
  });
});

describe('a tuning run', () => {
  const sheet = tinySheet([
    aStep('tune', [
      anItem('tuning', 'run', {
        stages: [
          { key: 'high', label: 'High' },
          { key: 'middle', label: 'Middle' },
          { key: 'low', label: 'Low' },
        ],
        postRunWaitS: 30,
        needsCasingClosed: true,
        needsHeatLoadOpen: true,
        basis: A_BASIS,
        blocks: ['leaving'],
      }),
      anItem('confirm', 'display'),
    ]),
  ]);
  type Run = RunRecord['tunings'][number];
  const started: Run = {
    itemKey: 'run',
    startedAt: DAY_START,
    stages: [],
    finishedAt: null,
    interruptedAt: null,
    interruptedReason: null,
  };
  const stage = (stageKey: string, seconds: number) => ({ stageKey, reachedAt: secondsAfter(DAY_START, seconds) });
  const all = [stage('high', 10), stage('middle', 70), stage('low', 130)];
  const at = (seconds: number, ...runs: readonly Partial<Run>[]) =>
    itemOf(
      progressOf(
        sheet,
        { ...blank, tunings: runs.map((run) => ({ ...started, ...run })) },
        { now: secondsAfter(DAY_START, seconds) },
      ),
      'run',
    );

  it('shows the stage it has reached and the one that comes next', () => {
    expect(at(80, { stages: all.slice(0, 2) })).toMatchObject({
      state: 'running',
      because: [{ code: 'tuning-running', nextStageKey: 'low' }],
      tuning: { reachedStageKeys: ['high', 'middle'], nextStageKey: 'low' },
    });
  });

  it('is over when all stages were reached, it has finished and its wait is over', () => {
    const finished = { stages: all, finishedAt: secondsAfter(DAY_START, 190) };
    expect(at(200, finished)).toMatchObject({
      state: 'running',
      because: [{ code: 'post-run-wait', secondsLeft: 20 }],
      timer: { kind: 'post-run', secondsLeft: 20 },
      blocks: ['leaving'],
    });
    expect(at(220, finished)).toMatchObject({ state: 'answered', blocks: [] });
  });

  it('must start again when it was interrupted, even half a minute before the end', () => {
    const interrupted = { stages: all, interruptedAt: secondsAfter(DAY_START, 150), interruptedReason: 'zone closed' };
    expect(at(400, interrupted)).toMatchObject({
      state: 'open',
      because: [{ code: 'tuning-interrupted', reason: 'zone closed' }],
      blocks: ['leaving'],
    });
    const again = { startedAt: secondsAfter(DAY_START, 300) };
    expect(at(400, interrupted, again)).toMatchObject({ state: 'running', tuning: { nextStageKey: 'high' } });
  });

  it('does not count when a stage was skipped or came in another order than on the sheet', () => {
    const finishedAt = secondsAfter(DAY_START, 190);
    expect(at(400, { stages: [stage('high', 10), stage('low', 130)], finishedAt }).because).toEqual([
      { code: 'tuning-stages-missing', stageKeys: ['middle', 'low'] },
    ]);
    const swapped = [stage('high', 10), stage('low', 70), stage('middle', 130)];
    expect(at(400, { stages: swapped, finishedAt }).because).toEqual([
      { code: 'tuning-stages-missing', stageKeys: ['low'] },
    ]);
  });
});

describe('a series', () => {
  const sheet = tinySheet([
    aStep('high', [
      anItem('series', 'flue', {
        firingPoint: 'high',
        quantities: ['o2DryVolPct', 'coPpm'],
        blocks: ['leaving'],
        mayBeNotPossible: false,
      }),
    ]),
  ]);
  const reached = { ...blank, firingPoints: [{ firingPoint: 'high', reachedAt: DAY_START }] };
  const sample = (quantity: 'o2DryVolPct' | 'coPpm', number: number, seconds: number, value: number | null = 5) =>
    reading('flue', quantity, value, secondsAfter(DAY_START, seconds), { sample: number });

  it('asks when the burner reached its rate, and shows how long it settles', () => {
    expect(itemOf(progressOf(sheet, blank), 'flue').because[0]).toEqual({
      code: 'firing-point-not-reached',
      firingPoint: 'high',
    });
    expect(itemOf(progressOf(sheet, reached, { now: secondsAfter(DAY_START, 100) }), 'flue').timer).toMatchObject({
      kind: 'settle',
      secondsLeft: 200,
    });
  });

  it('needs as many samples of every quantity as the sheet says', () => {
    const once = [sample('o2DryVolPct', 1, 310), sample('coPpm', 1, 310)];
    const twice = [...once, sample('o2DryVolPct', 2, 380)];
    expect(itemOf(progressOf(sheet, { ...reached, readings: twice }), 'flue')).toMatchObject({
      state: 'open',
      because: [{ code: 'too-few-samples', quantity: 'coPpm', have: 1, need: 2 }],
    });
    const done = { ...reached, readings: [...twice, sample('coPpm', 2, 380)] };
    expect(itemOf(progressOf(sheet, done), 'flue').state).toBe('answered');
  });

  it('does not count a replaced sample, nor a blank one', () => {
    const readings = [
      sample('o2DryVolPct', 1, 310),
      sample('o2DryVolPct', 2, 380),
      { ...sample('coPpm', 1, 310), supersededById: 'newer' },
      sample('coPpm', 2, 380),
    ];
    expect(itemOf(progressOf(sheet, { ...reached, readings }), 'flue').state).toBe('open');
    const blankOne = { ...sample('coPpm', 3, 400, null), notMeasuredReason: 'cell broken' };
    expect(itemOf(progressOf(sheet, { ...reached, readings: [...readings, blankOne] }), 'flue').because).toContainEqual(
      { code: 'not-measured', quantity: 'coPpm', reason: 'cell broken' },
    );
  });

  it('one good sample does not wipe out a bad one among those that decide', () => {
    const readings = [1, 2].flatMap((n) => [sample('o2DryVolPct', n, 300 + 60 * n), sample('coPpm', n, 300 + 60 * n)]);
    const findings = [aFinding({ readingId: readings[1]?.readingId ?? '', subject: 'coPpm' })];
    const bad = progressOf(sheet, { ...reached, readings }, { findings });
    expect(itemOf(bad, 'flue').state).toBe('blocked-by-finding');
    const third = [sample('o2DryVolPct', 3, 600), sample('coPpm', 3, 600)];
    expect(
      itemOf(progressOf(sheet, { ...reached, readings: [...readings, ...third] }, { findings }), 'flue').state,
    ).toBe('answered');
  });

  it('a lack of proof is judged on the newest sample alone', () => {
    const readings = [1, 2].flatMap((n) => [sample('o2DryVolPct', n, 300 + 60 * n), sample('coPpm', n, 300 + 60 * n)]);
    const unproven = (index: number): Finding =>
      aFinding({
        readingId: readings[index]?.readingId ?? '',
        verdict: 'within',
        proof: { proven: false, because: ['before-settled'] },
      });
    const record = { ...reached, readings };
    expect(itemOf(progressOf(sheet, record, { findings: [unproven(1)] }), 'flue').state).toBe('answered');
    expect(itemOf(progressOf(sheet, record, { findings: [unproven(3)] }), 'flue').state).toBe('blocked-by-finding');
  });
});

describe('readings before and after the work', () => {
  const series = (key: string) =>
    anItem('series', key, { firingPoint: 'high', quantities: ['coPpm'], blocks: ['leaving'] });
  const sheet = tinySheet([
    aStep('found', [series('as-found')], { needsClear: 'firing' }),
    aStep('final', [series('final-flue')], { needsClear: 'firing' }),
  ]);
  const sample = (itemKey: string, number: number, seconds: number) =>
    reading(itemKey, 'coPpm', 200, secondsAfter(DAY_START, seconds), { sample: number });
  const found = [sample('as-found', 1, 300), sample('as-found', 2, 400)];
  const finals = [sample('final-flue', 1, 5000), sample('final-flue', 2, 5100)];
  const marked = { ...blank, firingPoints: [{ firingPoint: 'high', reachedAt: DAY_START }] };
  const findings = found.map((one) => aFinding({ readingId: one.readingId }));
  const leaving = (readings: RunRecord['readings'], more: readonly Finding[] = []) =>
    blockedItems(progressOf(sheet, { ...marked, readings }, { findings: [...findings, ...more] }), 'leaving');

  it('what was found outside stays on record, and decides until it has been read again in full', () => {
    expect(leaving(found)).toEqual(['as-found', 'final-flue']);
    expect(leaving([...found, ...finals.slice(0, 1)])).toEqual(['as-found', 'final-flue']);
    expect(leaving([...found, ...finals])).toEqual([]);
  });

  it('holds for single readings at a firing point too, and for no other point', () => {
    const at = (point: string) =>
      tinySheet([
        aStep('found', [anItem('read', 'before', { quantity: 'returnC', point, blocks: ['leaving'] })]),
        aStep('final', [anItem('read', 'after', { quantity: 'returnC', point, blocks: ['leaving'] })]),
      ]);
    const before = reading('before', 'returnC', 40, DAY_START);
    const record = withReading(
      withReading(blank, before),
      reading('after', 'returnC', 52, secondsAfter(DAY_START, 900)),
    );
    const about = { findings: [aFinding({ readingId: before.readingId })] };
    expect(blockedItems(progressOf(at('high'), record, about), 'leaving')).toEqual([]);
    expect(blockedItems(progressOf(at('cold'), record, about), 'leaving')).toEqual(['before']);
  });

  it('a bad reading after the work is not excused by a good one before', () => {
    const after = finals.map((one) => aFinding({ readingId: one.readingId }));
    expect(leaving([...found, ...finals], after)).toEqual(['final-flue']);
  });
});

describe('a finding', () => {
  const sheet = tinySheet(
    [
      aStep('before', [
        anItem('read', 'static', { quantity: 'inletPressureMbarG', point: 'static', blocks: ['firing'] }),
      ]),
      aStep(
        'fire',
        [anItem('read', 'dynamic', { quantity: 'inletPressureMbarG', point: 'dynamic', blocks: ['leaving'] })],
        {
          needsClear: 'firing',
        },
      ),
    ],
    {
      limits: [
        {
          quantity: 'inletPressureMbarG',
          point: 'dynamic',
          min: 10,
          max: 35,
          mayStandWithAdvice: true,
          basis: A_BASIS,
        },
      ],
    },
  );
  const still = reading('static', 'inletPressureMbarG', 20, DAY_START);
  const burning = reading('dynamic', 'inletPressureMbarG', 9, secondsAfter(DAY_START, 600));
  const both = withReading(withReading(blank, still), burning);
  const about = (one: { readonly readingId: string }, more: Partial<Finding> = {}) =>
    aFinding({ readingId: one.readingId, ...more });

  it.each(['within', 'near-the-edge', 'no-limit-on-sheet'] as const)('%s and proven blocks nothing', (verdict) => {
    const progress = progressOf(sheet, both, { findings: [about(still, { verdict, blocks: ['firing', 'leaving'] })] });
    expect(progress.gates).toEqual({ firing: [], leaving: [], registration: [] });
  });

  it.each(['outside', 'cannot-tell-apart', 'cannot-judge'] as const)(
    '%s blocks what it and its item block',
    (verdict) => {
      const progress = progressOf(sheet, both, { findings: [about(still, { verdict, blocks: ['leaving'] })] });
      expect(itemOf(progress, 'static')).toMatchObject({ state: 'blocked-by-finding', blocks: ['firing', 'leaving'] });
      expect(progress.steps[1]?.lockedBecause).toMatchObject([{ code: 'hold-point', block: 'firing' }]);
    },
  );

  it('that blocks nothing is only shown', () => {
    const progress = progressOf(sheet, both, { findings: [about(still, { blocks: [] })] });
    expect(itemOf(progress, 'static').state).toBe('answered');
  });

  it('not proven before firing keeps the burner off; with the burner on it cannot, or it could never be proven', () => {
    const proof = { proven: false, because: ['instrument-out-of-date'] } as const;
    const cold = progressOf(sheet, both, { findings: [about(still, { verdict: 'within', proof })] });
    expect(blockedItems(cold, 'firing')).toEqual(['static']);
    const hot = progressOf(sheet, both, {
      findings: [about(burning, { verdict: 'within', proof, blocks: ['firing', 'leaving'] })],
    });
    expect(blockedItems(hot, 'firing')).toEqual([]);
    expect(blockedItems(hot, 'leaving')).toEqual(['dynamic']);
  });

  it('a stop with the burner on shuts the firing gate until a make-safe was closed after it, and leaving until re-read', () => {
    const findings = [about(burning, { verdict: 'stop', blocks: [] })];
    const found = progressOf(sheet, both, { findings });
    expect(blockedItems(found, 'firing')).toEqual(['dynamic']);
    expect(found.steps[1]).toMatchObject({ state: 'locked' });

    const tooEarly = progressOf(sheet, both, { findings, firingReleasedAt: secondsAfter(DAY_START, 599) });
    expect(tooEarly.steps[1]?.state).toBe('locked');
    const released = progressOf(sheet, both, { findings, firingReleasedAt: secondsAfter(DAY_START, 3600) });
    expect(released.steps[1]).toMatchObject({ state: 'open', lockedBecause: [] });
    expect(blockedItems(released, 'leaving')).toEqual(['dynamic']);

    const again = withReading(both, reading('dynamic', 'inletPressureMbarG', 19, secondsAfter(DAY_START, 4000)));
    expect(progressOf(sheet, again, { findings }).gates.leaving).toEqual([]);
  });

  it('a stop that was made safe does not come back while its sample is read again, O2 before CO', () => {
    const series = tinySheet([
      aStep('s', [anItem('series', 'flue', { firingPoint: 'high', quantities: ['o2DryVolPct', 'coPpm'] })], {
        needsClear: 'firing',
      }),
    ]);
    const stateAt = (o2At: number, coAt: number) => {
      const o2 = reading('flue', 'o2DryVolPct', 5, secondsAfter(DAY_START, o2At));
      const co = reading('flue', 'coPpm', 4000, secondsAfter(DAY_START, coAt));
      const inputs = { 'o2DryVolPct.reading': o2.readingId, 'coPpm.reading': co.readingId };
      const finding = aFinding({ verdict: 'stop', subject: 'air-free', basis: { ...aFinding().basis, inputs } });
      const record = {
        ...blank,
        readings: [co, o2],
        firingPoints: [{ firingPoint: 'high', reachedAt: DAY_START }],
      };
      const findings = [finding];
      return progressOf(series, record, { findings, firingReleasedAt: secondsAfter(DAY_START, 300) }).steps[0]?.state;
    };
    expect(stateAt(100, 110)).toBe('open');
    expect(stateAt(400, 110)).toBe('open');
    expect(stateAt(400, 420)).toBe('locked');
    expect(stateAt(100, 420)).toBe('locked');
  });

  it('goes with the reading that was replaced', () => {
    const replaced = { ...both, readings: both.readings.map((one) => ({ ...one, supersededById: 'newer' })) };
    const findings = [about(still, { verdict: 'stop' })];
    expect(progressOf(sheet, replaced, { findings }).gates.firing.map((one) => one.because)).toEqual([
      [{ code: 'not-answered' }],
    ]);
  });

  it('computed from readings belongs to the item of the last of them', () => {
    const finding = aFinding({
      subject: 'pressure-drop',
      basis: {
        limit: null,
        from: 'sheet',
        source: null,
        sheet: null,
        formula: 'a − b',
        inputs: { a: still.readingId, b: burning.readingId, drop: 11 },
      },
    });
    expect(itemOf(progressOf(sheet, both, { findings: [finding] }), 'dynamic').state).toBe('blocked-by-finding');
  });

  it('from three rising samples is not lost because only two of them decide', () => {
    const rising = tinySheet([
      aStep('s', [anItem('series', 'flue', { firingPoint: 'high', quantities: ['coPpm'], blocks: ['leaving'] })], {
        needsClear: 'firing',
      }),
    ]);
    const samples = [1, 2, 3].map((sample) =>
      reading('flue', 'coPpm', 20 * sample, secondsAfter(DAY_START, 60 * sample), { sample }),
    );
    const record = {
      ...blank,
      readings: samples,
      firingPoints: [{ firingPoint: 'high', reachedAt: DAY_START }],
    };
    const inputs = Object.fromEntries(samples.map((one) => [`coPpm#${one.sample}.reading`, one.readingId]));
    const finding = aFinding({ verdict: 'stop', subject: 'rising', basis: { ...aFinding().basis, inputs } });
    const held = progressOf(rising, record, { findings: [finding] });
    expect(blockedItems(held, 'firing')).toEqual(['flue']);
    const released = progressOf(rising, record, {
      findings: [finding],
      firingReleasedAt: secondsAfter(DAY_START, 300),
    });
    expect(released.steps[0]?.state).toBe('open');
  });

  it('about an earlier run of a wait does not outlive a new one', () => {
    const one = tinySheet([aStep('s', [anItem('hold', 'wait', { seconds: 60, basis: A_BASIS, blocks: ['firing'] })])]);
    const hold = { itemKey: 'wait', startedAt: DAY_START, requiredS: 60, endedAt: null, clockJumped: false };
    const record = {
      ...blank,
      holds: [
        { ...hold, clockJumped: true },
        { ...hold, startedAt: secondsAfter(DAY_START, 90) },
      ],
    };
    const findings = [aFinding({ subject: 'wait', verdict: 'cannot-judge', blocks: ['firing'] })];
    expect(progressOf(one, record, { findings, now: secondsAfter(DAY_START, 200) }).gates.firing).toEqual([]);
  });

  it('about no item stands on the run as a whole', () => {
    const finding = aFinding({ subject: 'clocked-input' });
    const progress = progressOf(sheet, both, { findings: [finding] });
    expect(progress.gates.leaving).toEqual([{ stepKey: null, itemKey: null, because: [{ code: 'finding', finding }] }]);
  });

  it("outside may stand with the maker's advice where the sheet says so; a stop never, and not without words", () => {
    const limit = { quantity: 'inletPressureMbarG', point: 'dynamic', min: 10, max: 35, severity: 'outside' } as const;
    const basis = { ...aFinding().basis, limit };
    const advised = withAnswer(both, 'dynamic', ADVICE_ANSWER, secondsAfter(DAY_START, 700), {
      reason: 'maker, by phone',
    });
    const leaving = (record: RunRecord, more: Partial<Finding>) =>
      blockedItems(progressOf(sheet, record, { findings: [about(burning, { basis, ...more })] }), 'leaving');
    expect(leaving(both, {})).toEqual(['dynamic']);
    expect(leaving(advised, {})).toEqual([]);
    expect(leaving(withAnswer(both, 'dynamic', ADVICE_ANSWER, DAY_START), {})).toEqual(['dynamic']);
    expect(leaving(advised, { verdict: 'stop' })).toEqual(['dynamic']);
    expect(leaving(advised, { basis: { ...basis, limit: { ...limit, max: 30 } } })).toEqual(['dynamic']);
    expect(leaving(advised, { basis: { ...basis, from: 'ceiling' } })).toEqual(['dynamic']);
  });
});

describe('options and other answers', () => {
  const options = [
    { value: 'smooth', label: 'Smooth' },
    { value: 'rough', label: 'Rough', outcome: 'finding' },
    { value: 'bang', label: 'Bang', outcome: 'stop' },
  ];
  const sheet = tinySheet([
    aStep('fire', [anItem('choose', 'light-off', { options, blocks: ['leaving'] })], { needsClear: 'firing' }),
    aStep('other', [
      anItem('confirm', 'relay', { notApplicable: true, blocks: ['leaving'] }),
      anItem('confirm', 'trap', { blocks: ['leaving'], mayBeNotPossible: false }),
      anItem('read', 'meter', { quantity: 'meterSeconds', blocks: ['leaving'] }),
      anItem('sign-off', 'signed', { by: 'licensed', blocks: ['leaving'], mayBeNotPossible: false }),
      anItem('witness', 'seen', { by: 'licensed', blocks: ['leaving'] }),
      anItem('photo', 'picture', { blocks: ['leaving'] }),
    ]),
  ]);
  const stateOf = (itemKey: string, record: RunRecord, more: Partial<RunProgressInput> = {}) =>
    itemOf(progressOf(sheet, record, more), itemKey);

  it('a finding is explained by its reason, a stop is not', () => {
    expect(stateOf('light-off', withAnswer(blank, 'light-off', 'rough', DAY_START)).because).toEqual([
      { code: 'option-needs-explanation', option: 'rough' },
    ]);
    const explained = withAnswer(blank, 'light-off', 'rough', DAY_START, { reason: 'air in the line' });
    expect(stateOf('light-off', explained).state).toBe('answered');
    const bang = withAnswer(blank, 'light-off', 'bang', DAY_START, { reason: 'air in the line' });
    expect(stateOf('light-off', bang)).toMatchObject({
      state: 'blocked-by-finding',
      because: [{ code: 'option-stop', option: 'bang' }],
      blocks: ['firing', 'leaving', 'registration'],
    });
    expect(progressOf(sheet, bang).steps[0]?.lockedBecause).toHaveLength(1);
    const released = stateOf('light-off', bang, { firingReleasedAt: secondsAfter(DAY_START, 60) });
    expect(released.blocks).toEqual(['leaving', 'registration']);
  });

  it('an option the sheet does not have is no answer', () => {
    expect(stateOf('light-off', withAnswer(blank, 'light-off', 'quiet', DAY_START)).because).toEqual([
      { code: 'not-an-option', value: 'quiet' },
    ]);
  });

  it('"not applicable" and "not possible" count only where the sheet allows them', () => {
    expect(stateOf('relay', withAnswer(blank, 'relay', 'not-applicable', DAY_START)).state).toBe('answered');
    expect(stateOf('trap', withAnswer(blank, 'trap', 'not-applicable', DAY_START)).state).toBe('open');
    const reason = 'no meter here';
    expect(stateOf('meter', withAnswer(blank, 'meter', null, DAY_START, { reason })).state).toBe('not-possible');
    expect(stateOf('trap', withAnswer(blank, 'trap', null, DAY_START, { reason }))).toMatchObject({
      state: 'open',
      because: [{ code: 'may-not-be-left-out', reason }],
      blocks: ['leaving'],
    });
    expect(stateOf('signed', withAnswer(blank, 'signed', null, DAY_START, { reason })).because).toEqual([
      { code: 'may-not-be-left-out', reason },
    ]);
    expect(stateOf('meter', withAnswer(blank, 'meter', null, DAY_START, { reason: '  ' })).state).toBe('open');
  });

  it('a blank is not zero: a reading needs a value, or a reason where it may be left out', () => {
    const nothing = reading('meter', 'meterSeconds', null, DAY_START);
    expect(stateOf('meter', withReading(blank, nothing)).because).toEqual([
      { code: 'not-measured', quantity: 'meterSeconds', reason: '' },
    ]);
    const because = { ...nothing, notMeasuredReason: 'no meter' };
    expect(stateOf('meter', withReading(blank, because)).state).toBe('not-possible');
    expect(stateOf('meter', withReading(blank, reading('meter', 'meterSeconds', 0, DAY_START))).state).toBe('answered');
  });

  it('a licensed signature needs a licensed person', () => {
    const signOff = { itemKey: 'signed', by: 'licensed', name: 'A', staffId: 'a', at: DAY_START } as const;
    const people = [{ staffId: 'a', name: 'A', isLicensed: false }];
    const record = { ...blank, signOffs: [signOff] };
    expect(stateOf('signed', record).state).toBe('answered');
    expect(stateOf('signed', record, { people }).because).toEqual([{ code: 'not-licensed', name: 'A' }]);
    expect(stateOf('signed', record, { people: [{ staffId: 'a', name: 'A', isLicensed: true }] }).state).toBe(
      'answered',
    );
    expect(stateOf('signed', { ...blank, signOffs: [{ ...signOff, staffId: null }] }).state).toBe('blocked-by-finding');
    expect(stateOf('signed', { ...blank, signOffs: [{ ...signOff, by: 'occupant' }] }).state).toBe('open');
  });

  it('a witness is licensed where asked, and never the one who did the work', () => {
    const people = [
      { staffId: TECHNICIAN_ID, name: 'Did It', isLicensed: true },
      { staffId: 'other', name: 'Saw It', isLicensed: true },
      { staffId: 'helper', name: 'Young One', isLicensed: false },
    ];
    const worked = withAnswer(blank, 'trap', 'yes', DAY_START);
    const seenBy = (name: string) => stateOf('seen', withAnswer(worked, 'seen', name, DAY_START), { people });
    expect(seenBy('saw it').state).toBe('answered');
    expect(seenBy('Did It').because).toEqual([{ code: 'witness-did-the-work', name: 'Did It' }]);
    expect(seenBy('Young One').because).toEqual([{ code: 'not-licensed', name: 'Young One' }]);
  });

  it('a photo answers a photo', () => {
    const photo = { itemKey: 'picture', attachmentId: 'p', sha256: '0', takenAt: DAY_START };
    expect(stateOf('picture', { ...blank, photos: [photo] }).state).toBe('answered');
  });
});

describe('fuel and serial', () => {
  const fuels = ['natural-gas', 'propane', 'no-tag'].map((value) => ({ value, label: value }));
  const sheet = tinySheet([
    aStep('arrival', [
      anItem('choose', 'plate', {
        identifies: 'plate-fuel',
        options: fuels,
        blocks: ['firing'],
        mayBeNotPossible: false,
      }),
      anItem('choose', 'tag', { identifies: 'tag-fuel', options: fuels, blocks: ['firing'] }),
      anItem('note', 'serial', { identifies: 'serial', holds: 'text', blocks: ['registration'] }),
    ]),
    aStep('fire', [anItem('confirm', 'lit')], { needsClear: 'firing' }),
  ]);
  const unknownPlate = { ...blank, appliance: { ...blank.appliance, plateFuel: null } };
  const seen = (record: RunRecord, plate: string, tag: string) =>
    withAnswer(withAnswer(record, 'plate', plate, DAY_START), 'tag', tag, DAY_START);

  it('an unknown plate fuel keeps the burner off', () => {
    const because = progressOf(sheet, unknownPlate).gates.firing.flatMap((one) => one.because);
    expect(because).toContainEqual({ code: 'plate-fuel-unknown' });
    expect(progressOf(sheet, seen(unknownPlate, 'natural-gas', 'no-tag')).gates.firing).toEqual([]);
  });

  it('F-04: plate for natural gas, propane on site, no conversion on record: not lit', () => {
    const site = { ...blank.site, fuel: 'propane' } as const;
    const record = { ...unknownPlate, fuel: 'propane', site } as const;
    const progress = progressOf(sheet, seen(record, 'natural-gas', 'propane'));
    expect(itemOf(progress, 'plate')).toMatchObject({
      state: 'blocked-by-finding',
      because: [{ code: 'fuel-mismatch', appliance: 'natural-gas', site: 'propane' }],
    });
    expect(progress.steps[1]?.state).toBe('locked');
    const converted = { ...record, appliance: { ...record.appliance, hasConversionRecord: true } };
    expect(progressOf(sheet, seen(converted, 'natural-gas', 'propane')).gates.firing).toEqual([]);
  });

  it('a hanging tag for another fuel keeps the burner off; no tag does not', () => {
    expect(itemOf(progressOf(sheet, seen(blank, 'natural-gas', 'propane')), 'tag').state).toBe('blocked-by-finding');
    expect(progressOf(sheet, seen(blank, 'natural-gas', 'no-tag')).gates.firing).toEqual([]);
  });

  it('a plate that differs from what the job says is asked about', () => {
    const job = {
      ...blank,
      appliance: { ...blank.appliance, plateFuel: 'propane', hasConversionRecord: true },
    } as const;
    expect(itemOf(progressOf(sheet, seen(job, 'natural-gas', 'no-tag')), 'plate').because).toEqual([
      { code: 'differs-from-job', field: 'plate-fuel', onJob: 'propane', seen: 'natural-gas' },
    ]);
  });

  it('a run on a fuel the site does not burn or the sheet does not know is not lit', () => {
    const otherSite = { ...blank, site: { ...blank.site, fuel: 'propane' } } as const;
    expect(progressOf(sheet, otherSite).gates.firing[0]?.because).toEqual([
      { code: 'fuel-mismatch', appliance: 'natural-gas', site: 'propane' },
    ]);
    const oil = emptyRecord('heating-oil');
    expect(progressOf(sheet, oil).gates.firing[0]?.because).toEqual([
      { code: 'fuel-not-on-sheet', fuel: 'heating-oil' },
    ]);
  });

  it('a serial is compared with the job, however it is spaced', () => {
    const typed = (serial: string) =>
      itemOf(progressOf(sheet, withAnswer(blank, 'serial', serial, DAY_START)), 'serial');
    expect(typed('ab 123-4567').state).toBe('answered');
    expect(typed('AB1234568')).toMatchObject({
      state: 'blocked-by-finding',
      because: [{ code: 'differs-from-job', field: 'serial', onJob: 'AB1234567', seen: 'AB1234568' }],
    });
  });
});

describe('items kept to a fuel, an emitter or an earlier answer', () => {
  const sheet = tinySheet([
    aStep('s', [
      anItem('confirm', 'propane-only', { onlyFor: { fuels: ['propane'] } }),
      anItem('confirm', 'floor-only', { onlyFor: { emitters: ['floor-slab'] } }),
      anItem('confirm', 'converted', { blocks: ['firing'] }),
      anItem('photo', 'kit', { blocks: ['firing'], onlyFor: { answer: { item: 'converted', is: ['yes'] } } }),
    ]),
  ]);
  const shown = (record: RunRecord) => progressOf(sheet, record).steps[0]?.items.map((item) => item.itemKey);

  it('are left out where they do not belong', () => {
    expect(shown(withAnswer(blank, 'converted', 'no', DAY_START))).toEqual(['converted']);
    expect(shown(withAnswer(emptyRecord('propane'), 'converted', 'yes', DAY_START))).toEqual([
      'propane-only',
      'converted',
      'kit',
    ]);
  });

  it('are asked when it is not known: missing is not none', () => {
    const noEmitters = { ...blank, site: { ...blank.site, emitters: [] } };
    expect(shown(noEmitters)).toEqual(['floor-only', 'converted', 'kit']);
    const waiting = itemOf(progressOf(sheet, blank), 'kit');
    expect(waiting).toMatchObject({
      state: 'waiting',
      because: [{ code: 'waits-for', itemKey: 'converted' }],
      blocks: ['firing'],
    });
    const impossible = withAnswer(blank, 'converted', null, DAY_START, { reason: 'plate gone' });
    expect(itemOf(progressOf(sheet, impossible), 'kit').state).toBe('open');
  });

  it('a bad finding on an item no longer asked for is not lost', () => {
    const one = reading('kit', 'coPpm', 900, DAY_START);
    const record = withReading(withAnswer(blank, 'converted', 'no', DAY_START), one);
    const findings = [aFinding({ readingId: one.readingId, verdict: 'stop' })];
    expect(progressOf(sheet, record, { findings }).gates.firing.some((each) => each.itemKey === null)).toBe(true);
  });
});

describe('the rate the burner stands at', () => {
  const sheet = tinySheet([aStep('s', [anItem('series', 'flue', { firingPoint: 'high', quantities: ['coPpm'] })])], {
    firingPoints: [
      { key: 'high', label: 'High', settleS: 60 },
      { key: 'low', label: 'Low', settleS: 60 },
    ],
  });
  const mark = (firingPoint: string, seconds: number) => ({
    firingPoint,
    reachedAt: secondsAfter(DAY_START, seconds),
  });
  const because = (record: RunRecord) => itemOf(progressOf(sheet, record), 'flue').because.map((one) => one.code);

  it('must be marked again after the burner has been somewhere else, until the samples are there', () => {
    const gone = { ...blank, firingPoints: [mark('high', 0), mark('low', 300)] };
    expect(because(gone)).toEqual(['firing-point-not-reached', 'too-few-samples']);
    expect(because({ ...gone, firingPoints: [...gone.firingPoints, mark('high', 900)] })).toEqual(['too-few-samples']);
    const samples = [1, 2].map((sample) =>
      reading('flue', 'coPpm', 20, secondsAfter(DAY_START, 60 * sample), { sample }),
    );
    expect(because({ ...gone, readings: samples })).toEqual([]);
  });
});
