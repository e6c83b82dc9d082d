/**
 * Walks a run from what was written down, through the same operations as the screens and in the order the procedure asks.
 * Time passes as it did on site: holds, settling and tuning take what they take, on the clock that is handed in.
 */
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import type { StepItem } from '../../domain/procedure/modelSheet.ts';
import { NONE_ANSWER } from '../../domain/procedure/progress/listProgress.ts';
import { runProgress } from '../../domain/procedure/progress.ts';
import type { ItemAddress, ItemProgress, RunProgress } from '../../domain/procedure/progressTypes.ts';
import { stepListOf, stepsOfList } from '../../domain/procedure/stepListOf.ts';
import { entryUnits } from '../../domain/quantity/entryUnits.ts';
import type { QuantityKey } from '../../domain/quantity/quantities.ts';
import type { InputOf, OperationName, OutputOf } from '../contract/index.ts';
import type { RunView } from '../contract/runs.ts';
import type { RecordedRun } from './recordedRun.ts';
import { SECONDS_PER_ENTRY, SECONDS_PER_TUNING_STAGE, secondsToRead } from './siteTimes.ts';

export type ReplayHands = {
  readonly must: <N extends OperationName>(name: N, input: InputOf<N>) => Promise<OutputOf<N>>;
  /** Stores a picture and gives its attachment. */
  readonly putPhoto: (fileName: string) => Promise<string>;
  readonly now: () => string;
  readonly wait: (seconds: number) => void;
  readonly instrumentFor: (quantity: QuantityKey) => string | null;
};

type RunAddress = { readonly visitId: string; readonly runId: string };
type ItemInput = RunAddress & ItemAddress;

/** A tuning run is entered once to run and once for its wait; anything asked more often has notes that do not fit. */
const MOST_TRIES = 3;

/** Goes on until nothing is left to do, or as far as this item; notes that do not fit the procedure are an error. */
export async function replayRun(
  notes: RecordedRun,
  at: RunAddress,
  hands: ReplayHands,
  untilItemKey: string | null = null,
): Promise<RunProgress> {
  const tried = new Map<string, number>();
  for (;;) {
    const view = await hands.must('visits.getRun', at);
    const progress = progressOf(view, hands.now());
    const next = progress.nextItem;
    if (next === null || next.itemKey === untilItemKey) return progress;
    const times = (tried.get(next.itemKey) ?? 0) + 1;
    tried.set(next.itemKey, times);
    const found = findItem(view, progress, next);
    if (found === null || times > MOST_TRIES) {
      throw new Error(`stuck at "${next.itemKey}": ${JSON.stringify(found?.state.because)}`);
    }
    if (!view.openedSteps.includes(next.stepKey)) await hands.must('visits.openStep', { ...at, stepKey: next.stepKey });
    await enter({ ...at, ...next }, found.item, found.state, view, notes, hands);
    hands.wait(SECONDS_PER_ENTRY);
  }
}

export function progressOf(view: RunView, now: string): RunProgress {
  return runProgress({
    sheet: view.sheet,
    steps: stepListOf(view.record.kind, view.sheet),
    record: view.record,
    findings: judgeRun({ record: view.record, sheet: view.sheet, reopenedAt: view.reopenedAt }),
    people: view.people,
    reopenedAt: view.reopenedAt,
    now,
  });
}

function findItem(
  view: RunView,
  progress: RunProgress,
  at: ItemAddress,
): { readonly item: StepItem; readonly state: ItemProgress } | null {
  const steps = stepsOfList(view.sheet, stepListOf(view.record.kind, view.sheet));
  const item = steps.find((step) => step.key === at.stepKey)?.items.find((one) => one.key === at.itemKey);
  const state = progress.steps
    .find((step) => step.stepKey === at.stepKey)
    ?.items.find((one) => one.itemKey === at.itemKey);
  return item === undefined || state === undefined ? null : { item, state };
}

async function enter(
  at: ItemInput,
  item: StepItem,
  state: ItemProgress,
  view: RunView,
  notes: RecordedRun,
  hands: ReplayHands,
): Promise<void> {
  switch (item.kind) {
    case 'confirm':
    case 'choose':
    case 'note':
    case 'witness': {
      const answer = notes.answers[item.key] ?? missing(item);
      await hands.must(
        'visits.answer',
        typeof answer === 'string'
          ? { ...at, value: answer, reason: null }
          : { ...at, value: null, reason: answer.notPossible },
      );
      return;
    }
    case 'parts':
    case 'lockouts':
      await hands.must('visits.answer', { ...at, value: NONE_ANSWER, reason: null });
      return;
    case 'read':
      await record(at, item.quantity, 1, notes.readings[item.key] ?? missing(item), hands);
      return;
    case 'series':
      await recordSeries(at, item, view, notes, hands);
      return;
    case 'hold':
      await hands.must('visits.startHold', at);
      hands.wait(item.seconds);
      await hands.must('visits.endHold', at);
      return;
    case 'tuning':
      if (state.timer !== null) {
        hands.wait(state.timer.secondsLeft);
        return;
      }
      await hands.must('visits.startTuning', at);
      for (const stage of item.stages) {
        hands.wait(SECONDS_PER_TUNING_STAGE);
        await hands.must('visits.reachTuningStage', { ...at, stageKey: stage.key });
      }
      hands.wait(SECONDS_PER_TUNING_STAGE);
      await hands.must('visits.finishTuning', at);
      return;
    case 'photo': {
      const fileName = notes.photos[item.key] ?? notes.photos['default'] ?? missing(item);
      await hands.must('visits.attachPhoto', { ...at, attachmentId: await hands.putPhoto(fileName) });
      return;
    }
    case 'sign-off':
      await hands.must('visits.signOff', {
        ...at,
        name: notes.signOffs[item.key] ?? missing(item),
        signatureAttachmentId: null,
      });
      return;
  }
}

async function recordSeries(
  at: ItemInput,
  item: Extract<StepItem, { kind: 'series' }>,
  view: RunView,
  notes: RecordedRun,
  hands: ReplayHands,
): Promise<void> {
  const samples = notes.series[item.key] ?? missing(item);
  const { itemKey: _itemKey, ...step } = at;
  await hands.must('visits.reachFiringPoint', { ...step, firingPoint: item.firingPoint });
  hands.wait(view.sheet.firingPoints.find((point) => point.key === item.firingPoint)?.settleS ?? 0);
  const count = Math.max(...Object.values(samples).map((typed) => typed.length));
  for (let sample = 1; sample <= count; sample += 1) {
    for (const [quantity, typed] of Object.entries(samples)) {
      const one = typed[sample - 1];
      if (one !== undefined) await record(at, quantity as QuantityKey, sample, one, hands);
    }
    hands.wait(view.sheet.steady.apartS);
  }
}

type Entry = { readonly text: string; readonly unit: string } | { readonly notMeasured: string };

async function record(
  at: ItemInput,
  quantity: QuantityKey,
  sample: number,
  entry: Entry,
  hands: ReplayHands,
): Promise<void> {
  const isMeasured = 'text' in entry;
  if (isMeasured) hands.wait(secondsToRead(quantity, entry.text));
  await hands.must('visits.recordReading', {
    ...at,
    quantity,
    sample,
    typedText: isMeasured ? entry.text : '',
    typedUnit: isMeasured ? entry.unit : entryUnits(quantity)[0].symbol,
    notMeasuredReason: isMeasured ? null : entry.notMeasured,
    instrumentId: isMeasured ? hands.instrumentFor(quantity) : null,
    measuredById: null,
  });
}

function missing(item: StepItem): never {
  throw new Error(`the notes have nothing for "${item.key}" (${item.kind}: ${item.label})`);
}
