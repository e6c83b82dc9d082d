/** Prints the one closing line that CI reads: `N passed, N failed, N skipped`. */
import type { Reporter, SerializedError, TestModule } from 'vitest/node';

export default class ClosingLineReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly SerializedError[]): void {
    const counts = { passed: 0, failed: unhandledErrors.length, skipped: 0 };
    for (const module of modules) {
      if (module.errors().length > 0) counts.failed += 1;
      for (const test of module.children.allTests()) {
        const state = test.result().state;
        if (state === 'passed') counts.passed += 1;
        else if (state === 'failed') counts.failed += 1;
        else counts.skipped += 1;
      }
    }
    process.stdout.write(`\n${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped\n`);
  }
}
