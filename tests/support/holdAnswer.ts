/** Holds an answer back on its way to the page: done by the core, and the page does not hear of it before it is let. */
import type { Page } from 'playwright-core';

/** Answers how to let it go. */
export async function holdAnswer(page: Page, operation: string): Promise<() => Promise<void>> {
  const gate = Promise.withResolvers<void>();
  await page.route(`**/${operation}`, async (route) => {
    const response = await route.fetch();
    await gate.promise;
    await route.fulfill({ response });
  });
  return async () => {
    gate.resolve();
    await page.unrouteAll({ behavior: 'wait' });
  };
}
