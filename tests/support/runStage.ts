/** What a person sees of a run that is being walked: which item is open, where the keyboard is, what is asked. */
import type { Page } from 'playwright-core';

export type RunStage = {
  readonly isLeaving: boolean;
  readonly stepTitle: string;
  readonly itemKey: string | null;
  /** The keyboard is in the open item. */
  readonly hasKeyboard: boolean;
  readonly buttonText: string;
  readonly unit: string | null;
  /** `1 o2DryVolPct`: sample and quantity of a box in a series. */
  readonly box: string | null;
  readonly asksInstrument: boolean;
  readonly asksToLookAgain: boolean;
  readonly problem: string;
  readonly timer: string | null;
  readonly isStopped: boolean;
};

export function readStage(page: Page): Promise<RunStage> {
  return page.evaluate<RunStage>(IN_PAGE);
}

/** Text, because it runs in the page: this side knows no document. */
const IN_PAGE = `(() => {
  const focused = document.activeElement;
  const card = document.querySelector('[data-card]');
  const text = (selector, within = document) => within.querySelector(selector)?.textContent?.trim() ?? '';
  const row = focused?.closest('.run-box-row');
  return {
    isLeaving: document.getElementById('run-leave-title') !== null,
    stepTitle: text('#run-stage-title'),
    itemKey: card?.dataset.card ?? null,
    hasKeyboard: card !== null && focused !== null && card.contains(focused),
    buttonText: focused instanceof HTMLButtonElement ? focused.textContent : '',
    unit: row?.querySelector('.run-unit-button, .run-unit')?.textContent?.trim() ?? null,
    box: focused?.closest('[data-box]')?.dataset.box ?? null,
    asksInstrument: card?.querySelector('.run-ask') != null,
    asksToLookAgain: card?.querySelector('.run-kept') != null,
    problem: card === null ? '' : text('.run-problem, .run-card-why', card),
    timer: card?.querySelector('[role="timer"]')?.textContent ?? null,
    isStopped: document.querySelector('dialog[open]') !== null,
  };
})()`;
