/** Two hands on a keyboard: the only way these tests touch the app. Counts every key that is not a letter of a value. */
import type { Page } from 'playwright-core';

export type KeyCount = { readonly fields: number; readonly keys: number; readonly letters: number };

export type KeyboardHands = {
  readonly page: Page;
  /** One key or chord that is not part of a value. */
  readonly press: (key: string) => Promise<void>;
  /** The letters of a value. */
  readonly type: (text: string) => Promise<void>;
  /** Tab until the thing with this name has the keyboard. */
  readonly tabTo: (name: string | RegExp, by?: 'Tab' | 'Shift+Tab') => Promise<void>;
  readonly fill: (label: string | RegExp, text: string) => Promise<void>;
  readonly choose: (label: string | RegExp, option: string) => Promise<void>;
  readonly pressButton: (name: string | RegExp, by?: 'Tab' | 'Shift+Tab') => Promise<void>;
  /** Which file the system's chooser is answered with when it opens. */
  readonly chooseFile: (path: string) => void;
  readonly countField: () => void;
  /** What was counted since the last time. */
  readonly takeCount: () => KeyCount;
};

const MOST_TABS = 160;
const PATIENCE_MS = 10_000;

export function keyboardHands(page: Page): KeyboardHands {
  let count = { fields: 0, keys: 0, letters: 0 };

  let file: string | null = null;
  // Heard from the start: a chooser that opens before anybody listens would stay open.
  page.on('filechooser', (chooser) => {
    // A browser killed meanwhile takes no file any more: whoever waits for the photo is told so.
    if (file !== null) chooser.setFiles(file).catch(() => undefined);
  });

  const press = async (key: string) => {
    count = { ...count, keys: count.keys + 1 };
    await page.keyboard.press(key);
  };
  const type = async (text: string) => {
    count = { ...count, letters: count.letters + text.length };
    await page.keyboard.type(text);
  };
  const countField = () => {
    count = { ...count, fields: count.fields + 1 };
  };
  const tabTo: KeyboardHands['tabTo'] = async (name, by = 'Tab') => {
    const seen: string[] = [];
    for (let tabs = 0; tabs < MOST_TABS; tabs += 1) {
      await press(by);
      const focused = await nameOfFocus(page);
      if (typeof name === 'string' ? focused === name : name.test(focused)) return;
      seen.push(focused);
    }
    throw new Error(`Tab never came to ${name}; it came to: ${[...new Set(seen)].join(' | ')}`);
  };
  /** A form that opens may have put the keyboard there already. */
  const comeTo = async (name: string | RegExp) => {
    const focused = await nameOfFocus(page);
    const isThere = typeof name === 'string' ? focused === name : name.test(focused);
    if (!isThere || !(await page.evaluate<boolean>(IS_UNTOUCHED))) await tabTo(name);
  };
  return {
    page,
    press,
    type,
    tabTo,
    async fill(label, text) {
      await comeTo(label);
      await type(text);
      countField();
    },
    async choose(label, option) {
      await comeTo(label);
      const { options, at } = await optionOnOffer(page, option, label);
      const distance = at - options.chosen;
      const letters = lettersTo(options.texts, at);
      if (letters.length < Math.abs(distance)) for (const letter of letters) await press(letter);
      else for (let step = 0; step < Math.abs(distance); step += 1) await press(distance > 0 ? 'ArrowDown' : 'ArrowUp');
      const after = await page.evaluate<SelectState>(FOCUSED_SELECT);
      if (after.chosen !== at) throw new Error(`${label}: "${after.texts[after.chosen]}" was chosen, not "${option}"`);
      countField();
    },
    async pressButton(name, by = 'Tab') {
      await tabTo(name, by);
      await press('Enter');
    },
    chooseFile(path) {
      file = path;
    },
    countField,
    takeCount() {
      const taken = count;
      count = { fields: 0, keys: 0, letters: 0 };
      return taken;
    },
  };
}

/** What can be chosen may still be asked of the core. */
async function optionOnOffer(
  page: Page,
  option: string,
  label: string | RegExp,
): Promise<{ readonly options: SelectState; readonly at: number }> {
  const until = Date.now() + PATIENCE_MS;
  for (;;) {
    const options = await page.evaluate<SelectState>(FOCUSED_SELECT);
    const at = options.texts.findIndex((text) => text.startsWith(option));
    if (at >= 0) return { options, at };
    if (Date.now() > until) throw new Error(`${label}: there is no "${option}" among ${options.texts.join(' | ')}`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

/** The first letters of an option that no other begins with: a select takes them for a choice. */
function lettersTo(texts: readonly string[], at: number): string {
  const wanted = texts[at]?.toLowerCase() ?? '';
  for (let length = 1; length <= wanted.length; length += 1) {
    const start = wanted.slice(0, length);
    if (texts.every((text, index) => index === at || !text.toLowerCase().startsWith(start))) return start;
  }
  return wanted;
}

const IS_UNTOUCHED = `(() => {
  const focused = document.activeElement;
  return focused.tagName === 'SELECT' || focused.value === '';
})()`;

type SelectState = { readonly texts: readonly string[]; readonly chosen: number };

// Text, because it runs in the page: this side knows no document.
const FOCUSED_SELECT = `(() => {
  const select = document.activeElement;
  return { texts: [...(select.options ?? [])].map((one) => one.text), chosen: select.selectedIndex ?? -1 };
})()`;

/** As a screen reader would say it, near enough. */
function nameOfFocus(page: Page): Promise<string> {
  return page.evaluate<string>(NAME_OF_FOCUS);
}

const NAME_OF_FOCUS = `(() => {
  const focused = document.activeElement;
  if (focused === null || focused === document.body) return '(nothing)';
  const labels = [...(focused.labels ?? [])];
  const ids = focused.getAttribute('aria-labelledby')?.split(' ') ?? [];
  const textOf = (elements) => elements.map((one) => one?.textContent ?? '').join(' ');
  const name =
    focused.getAttribute('aria-label') ??
    (labels.length > 0
      ? textOf(labels)
      : ids.length > 0
        ? textOf(ids.map((id) => document.getElementById(id)))
        : (focused.textContent ?? ''));
  return name.replace(/\\s+/g, ' ').replace(/ ?\\*$/, '').trim();
})()`;
