/** Puts one question to the probe page and brings back its answer. */
import type { Page } from 'playwright-core';
import { fromTagged, toTagged } from './taggedJson.ts';

type ProbePage = { readonly probe: (text: string) => Promise<string> };

export type Heard = {
  readonly topics: readonly (readonly string[])[];
  readonly states: readonly string[];
  readonly violations: readonly string[];
};

export async function askPage(page: Page, what: string, ...args: unknown[]): Promise<unknown> {
  const question = toTagged({ what, args });
  return fromTagged(await page.evaluate((text) => (globalThis as object as ProbePage).probe(text), question));
}

export async function askHeard(page: Page): Promise<Heard> {
  return (await askPage(page, 'heard')) as Heard;
}
