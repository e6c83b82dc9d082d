/** Runs axe over what is on screen and gathers what it finds serious or critical. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

export type AccessProblem = { readonly screen: string; readonly rule: string; readonly where: string };

/** `within`, `rules`: a part of the page, or of what axe knows, where the rest has been looked at already. */
export async function checkAccess(
  page: Page,
  screen: string,
  { within, rules }: { readonly within?: string; readonly rules?: readonly string[] } = {},
): Promise<readonly AccessProblem[]> {
  await settle(page);
  const axe = new AxeBuilder({ page }).setLegacyMode(true);
  if (within !== undefined) axe.include(within);
  if (rules !== undefined) axe.withRules([...rules]);
  const { violations } = await axe.analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => ({
      screen,
      rule: id,
      where: nodes
        .slice(0, 3)
        .map((node) => `${node.target.join(' ')} ${node.failureSummary ?? ''}`)
        .join('; '),
    }));
}

/** Waits out what is fading or moving: halfway between two colours is no colour of ours. What turns for ever is left alone. */
async function settle(page: Page): Promise<void> {
  await page.evaluate(
    `Promise.allSettled(document.getAnimations()
      .filter(({ effect }) => effect.getComputedTiming().endTime !== Infinity).map(({ finished }) => finished)).then(() => null)`,
  );
}
