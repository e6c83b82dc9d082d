/** Walks a run in the app from what was written down, key by key, in whatever order the app leads. */
import { join } from 'node:path';
import type { ModelSheet, StepItem } from '../../domain/procedure/modelSheet.ts';
import type { RecordedRun } from '../../electron/demo/recordedRun.ts';
import type { KeyboardHands } from './keyboardHands.ts';
import { type RunStage, readStage } from './runStage.ts';
import { APP_ROOT } from './testCore.ts';

export type WalkRunOptions = {
  readonly hands: KeyboardHands;
  readonly sheet: ModelSheet;
  readonly notes: RecordedRun;
  readonly wait: (seconds: number) => Promise<void>;
  /** Called where something is to be looked at or done in the middle of an item. */
  readonly onMoment: (moment: Moment) => Promise<void>;
};

export type Moment =
  | { readonly at: 'step'; readonly stepTitle: string }
  | { readonly at: 'hold'; readonly itemKey: string; readonly seconds: number }
  | { readonly at: 'box'; readonly itemKey: string; readonly box: string }
  | { readonly at: 'item'; readonly itemKey: string };

/** From lighting to the next stage of a tuning run. */
const SECONDS_PER_TUNING_STAGE = 90;
const PATIENCE_MS = 20_000;

export async function walkRunByKeys(options: WalkRunOptions): Promise<void> {
  const { hands, sheet, onMoment } = options;
  const items = new Map(sheet.startup.flatMap((step) => step.items).map((item) => [item.key, item]));
  let stepTitle = '';
  const visits = new Map<string, number>();
  for (;;) {
    const stage = await waitFor(hands, (one) => one.isLeaving || one.hasKeyboard, 'an open item with the keyboard');
    if (stage.isLeaving) return;
    const item = items.get(stage.itemKey ?? '');
    if (item === undefined) throw new Error(`no item on screen: ${JSON.stringify(stage)}`);
    const times = (visits.get(item.key) ?? 0) + 1;
    visits.set(item.key, times);
    if (times > 3) throw new Error(`came to "${item.key}" again and again: ${JSON.stringify(stage)}`);
    if (stage.stepTitle !== stepTitle) {
      stepTitle = stage.stepTitle;
      await onMoment({ at: 'step', stepTitle });
    }
    await onMoment({ at: 'item', itemKey: item.key });
    await enterItem(item, options);
  }
}

async function enterItem(item: StepItem, options: WalkRunOptions): Promise<void> {
  const { hands, notes, wait, onMoment } = options;
  switch (item.kind) {
    case 'confirm': {
      const answer = notes.answers[item.key] ?? missing(item);
      hands.countField();
      await hands.press(answer === 'yes' ? 'y' : answer === 'not-applicable' ? 'a' : 'n');
      return leave(item, hands);
    }
    case 'choose': {
      const answer = notes.answers[item.key] ?? missing(item);
      hands.countField();
      await hands.press(String(item.options.findIndex((option) => option.value === answer) + 1));
      return leave(item, hands);
    }
    case 'note':
    case 'witness': {
      const answer = notes.answers[item.key] ?? missing(item);
      hands.countField();
      await hands.type(String(answer));
      await hands.press('Enter');
      return leave(item, hands);
    }
    case 'read':
      hands.countField();
      await typeReading(notes.readings[item.key] ?? missing(item), hands);
      await hands.press('Enter');
      return leave(item, hands);
    case 'series':
      return enterSeries(item, options);
    case 'hold':
      hands.countField();
      await hands.press('Enter');
      await waitFor(hands, (stage) => stage.timer !== null, 'the wait to run');
      await onMoment({ at: 'hold', itemKey: item.key, seconds: item.seconds });
      await wait(item.seconds);
      await waitFor(hands, (stage) => stage.buttonText.startsWith('Go on'), 'the wait to be over', item.key);
      await hands.press('Enter');
      return leave(item, hands);
    case 'tuning':
      hands.countField();
      await pressThrough('Tuning run started', hands);
      for (const stage of item.stages) {
        await wait(SECONDS_PER_TUNING_STAGE);
        await pressThrough(`${stage.label} reached`, hands);
      }
      await wait(SECONDS_PER_TUNING_STAGE);
      await pressThrough('The display says finished', hands);
      await wait(item.postRunWaitS);
      await waitFor(hands, (stage) => stage.buttonText.startsWith('Go on'), 'the way on', item.key);
      await hands.press('Enter');
      return leave(item, hands);
    case 'photo': {
      const fileName = notes.photos[item.key] ?? notes.photos['default'] ?? missing(item);
      hands.countField();
      hands.chooseFile(join(APP_ROOT, 'assets/demo/photos', fileName));
      await hands.press('Enter');
      await waitFor(hands, (stage) => stage.buttonText.startsWith('Go on'), 'the photo to be kept', item.key);
      await hands.press('Enter');
      return leave(item, hands);
    }
    case 'sign-off':
      hands.countField();
      if (item.by === 'licensed') await hands.press('s');
      else {
        await hands.type(notes.signOffs[item.key] ?? missing(item));
        await hands.press('Enter');
      }
      return leave(item, hands);
  }
}

async function enterSeries(item: Extract<StepItem, { kind: 'series' }>, options: WalkRunOptions): Promise<void> {
  const { hands, notes, sheet, wait, onMoment } = options;
  const samples = notes.series[item.key] ?? missing(item);
  const isThere = (await readStage(hands.page)).box !== null;
  if (!isThere) {
    await hands.press('Enter');
    await waitFor(hands, (stage) => stage.box !== null, 'the boxes of the samples', item.key);
    await wait(sheet.firingPoints.find((point) => point.key === item.firingPoint)?.settleS ?? 0);
  }
  for (;;) {
    const stage = await readStage(hands.page);
    if (stage.itemKey !== item.key) return;
    const { box } = stage;
    if (box === null) throw new Error(`the keyboard is in no box: ${JSON.stringify(stage)}`);
    await onMoment({ at: 'box', itemKey: item.key, box });
    const [sample, quantity] = box.split(' ');
    const entry = samples[quantity ?? '']?.[Number(sample) - 1];
    if (entry !== undefined) {
      hands.countField();
      await typeReading(entry, hands);
    }
    await hands.press('Enter');
    const next = await waitOn(hands, (one) => one.itemKey !== item.key || (one.box !== null && one.box !== box));
    if (next.itemKey === item.key && next.box?.split(' ')[0] !== sample) await wait(sheet.steady.apartS);
  }
}

type Entry = { readonly text: string; readonly unit: string } | { readonly notMeasured: string };

async function typeReading(entry: Entry, hands: KeyboardHands): Promise<void> {
  if ('notMeasured' in entry) throw new Error('the notes of this test measure everything');
  for (let switches = 0; switches < 8; switches += 1) {
    const { unit } = await readStage(hands.page);
    if (unit === null || unit === entry.unit) break;
    await hands.press('Alt+u');
  }
  await hands.type(entry.text);
}

async function pressThrough(words: string, hands: KeyboardHands): Promise<void> {
  await waitFor(hands, (stage) => stage.buttonText.startsWith(words), words);
  await hands.press('Enter');
}

const leave = async (item: StepItem, hands: KeyboardHands): Promise<void> =>
  void (await waitOn(hands, (stage) => stage.isLeaving || (stage.itemKey !== item.key && stage.hasKeyboard)));

/** Until it is so; meanwhile answers what the app asks: which instrument, and whether it is to stay as it is. */
async function waitOn(hands: KeyboardHands, isSo: (stage: RunStage) => boolean): Promise<RunStage> {
  const asked = new Set<string>();
  const until = Date.now() + PATIENCE_MS;
  for (;;) {
    const stage = await readStage(hands.page);
    if (isSo(stage)) return stage;
    if (stage.asksInstrument && !asked.has('instrument')) {
      asked.add('instrument');
      await hands.press('Alt+1');
    } else if (stage.asksToLookAgain && !asked.has('look')) {
      asked.add('look');
      await hands.press('Enter');
    }
    if (stage.isStopped || Date.now() > until) throw new Error(`it does not go on: ${JSON.stringify(stage)}`);
    await pause();
  }
}

async function waitFor(
  hands: KeyboardHands,
  isSo: (stage: RunStage) => boolean,
  what: string,
  itemKey?: string,
): Promise<RunStage> {
  const until = Date.now() + PATIENCE_MS;
  for (;;) {
    const stage = await readStage(hands.page);
    if (isSo(stage) && (itemKey === undefined || stage.itemKey === itemKey)) return stage;
    if (Date.now() > until) throw new Error(`waited in vain for ${what}: ${JSON.stringify(stage)}`);
    await pause();
  }
}

const pause = () => new Promise((resolve) => setTimeout(resolve, 40));

function missing(item: StepItem): never {
  throw new Error(`the notes have nothing for "${item.key}" (${item.kind}: ${item.label})`);
}
