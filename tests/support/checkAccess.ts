/** Runs axe over what is on screen and gathers what it finds serious or critical. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

export type AccessProblem = { readonly screen: string; readonly rule: string; readonly where: string };

export async function checkAccess(page: Page, screen: string): Promise<readonly AccessProblem[]> {
  const { violations } = await new AxeBuilder({ page }).setLegacyMode(true).analyze();
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
