/**
 * From the last key of a value to its finding painted, in Chromium, on a run with everything read: measured in the page, from
 * the key's own time stamp to the first frame after the finding's words have changed.
 */
import type { Page } from 'playwright-core';
import { buildApp } from '../../scripts/buildApp.ts';
import { isBuildNeeded } from '../../scripts/buildCheck.ts';
import { openCaseStage } from '../support/caseStage.ts';
import { APP_ROOT } from '../support/testCore.ts';
import type { BenchResult } from './benchResult.ts';

const GOAL_MS = 50;
const ROUNDS = 30;
const LEAST_READINGS = 60;

/** Where a number is typed whose every digit changes what the judgement says of it. */
const BOXES: readonly {
  readonly name: string;
  readonly stepKey: string;
  readonly itemKey: string;
  readonly line: RegExp;
  readonly box: string;
  readonly valueOf: (round: number) => string;
}[] = [
  {
    name: 'an outdoor temperature',
    stepKey: 'controls',
    itemKey: 'outdoor-displayed',
    line: /as displayed/,
    box: '[data-card="outdoor-displayed"] input.run-number',
    valueOf: (round) => `${12 + round}.${1 + (round % 9)}`,
  },
  {
    name: 'CO in a table of samples',
    stepKey: 'combustion-high',
    itemKey: 'high-flue',
    line: /Flue gas/,
    box: '[data-box="2 coPpm"] input',
    valueOf: (round) => `${131 + 10 * round + (round % 7)}`,
  },
  {
    name: 'the seconds of a timed meter',
    stepKey: 'gas-pressures',
    itemKey: 'meter-seconds',
    line: /Time for them/,
    box: '[data-card="meter-seconds"] input.run-number',
    valueOf: (round) => `${61 + round}.${1 + (round % 9)}`,
  },
];

export async function benchTyping(): Promise<readonly BenchResult[]> {
  if (isBuildNeeded(APP_ROOT)) await buildApp(APP_ROOT, 'warn');
  const stage = await openCaseStage('2026-03-03T13:00:00.000Z', { hasRealPageClock: true });
  try {
    const { run } = await stage.begin({});
    const { record } = await stage.must('visits.getRun', { visitId: run.visitId, runId: run.runId });
    if (record.readings.length < LEAST_READINGS) throw new Error(`only ${record.readings.length} readings in the run`);
    const results: BenchResult[] = [];
    for (const box of BOXES) {
      await stage.showRun(run, box.stepKey);
      await stage.page.getByRole('button', { name: box.line }).first().click();
      await stage.page.locator(box.box).click();
      const times = await typeAndMeasure(stage.page, box.valueOf);
      results.push({
        name: `${box.name}, ${record.readings.length} readings in the run: last key to finding, 95th percentile`,
        ms: p95(times),
        rawMs: null,
        goal: GOAL_MS,
      });
      // What was typed is not to be asked about on the way out.
      await stage.page.keyboard.press('Control+A');
      await stage.page.keyboard.press('Delete');
    }
    return results;
  } finally {
    await stage.close();
  }
}

async function typeAndMeasure(page: Page, valueFor: (round: number) => string): Promise<readonly number[]> {
  await page.evaluate(WATCH);
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    await page.keyboard.press('Control+A');
    await page.keyboard.type(valueFor(round), { delay: 60 });
    await page.waitForFunction('window.lightoffTyping.paintedAfterMs !== null');
    times.push(await page.evaluate<number>('window.lightoffTyping.paintedAfterMs'));
  }
  return times;
}

/** Text, because it runs in the page: this side knows no window. */
const WATCH = `(() => {
  window.lightoffTyping?.stop();
  const state = { keyAt: null, paintedAfterMs: null };
  const onKey = (event) => {
    if (event.key.length !== 1 || event.ctrlKey) return;
    state.keyAt = event.timeStamp;
    state.paintedAfterMs = null;
  };
  const isFinding = ({ target, addedNodes }) =>
    (target.nodeType === 1 ? target : target.parentElement)?.closest('.run-findings') != null ||
    [...addedNodes].some((node) => node.nodeType === 1 && (node.matches('.run-findings') || node.querySelector('.run-findings') !== null));
  const observer = new MutationObserver((changes) => {
    const { keyAt } = state;
    if (keyAt === null || !changes.some(isFinding)) return;
    state.keyAt = null;
    requestAnimationFrame(() => {
      const channel = new MessageChannel();
      channel.port1.onmessage = () => { state.paintedAfterMs = performance.now() - keyAt; };
      channel.port2.postMessage(null);
    });
  });
  window.addEventListener('keydown', onKey, true);
  observer.observe(document.querySelector('main'), { subtree: true, childList: true, characterData: true });
  state.stop = () => { observer.disconnect(); window.removeEventListener('keydown', onKey, true); };
  window.lightoffTyping = state;
})()`;

function p95(times: readonly number[]): number {
  return times.toSorted((one, other) => one - other)[Math.ceil(times.length * 0.95) - 1] ?? Number.NaN;
}
