import { defineConfig } from 'vitest/config';

const electronDouble = new URL('./tests/support/electronDouble.ts', import.meta.url).pathname;

const PURE = ['checks', 'domain', 'field-cases', 'catchRate', 'renderer'].map((one) => `tests/${one}/**/*.test.ts`);

export default defineConfig({
  test: {
    // A bare `import 'electron'` in Node tries to download a runtime: every project gets the double.
    alias: { electron: electronDouble },
    // One less than the cores is the default: half of a machine with two.
    maxWorkers: '100%',
    // What is waited for comes soon on a computer of one's own; the cores may be shared, and slow is not wrong.
    expect: { poll: { timeout: 20_000 } },
    setupFiles: ['./tests/support/seedOfProperties.ts'],
    reporters: ['default', './tests/support/closingLineReporter.ts'],
    projects: [
      {
        extends: true,
        test: {
          // Functions without a store, a file or a clock: nothing that one test file leaves behind can reach another, so
          // all run in one world, which takes a fifth of the time.
          name: 'pure',
          isolate: false,
          // Properties try thousands of cases, and the cores may be shared: slow is not wrong.
          testTimeout: 60_000,
          include: [...PURE],
        },
      },
      {
        extends: true,
        test: {
          name: 'unit',
          globalSetup: ['./tests/support/buildThreads.ts'],
          setupFiles: ['./tests/support/cheapPins.ts'],
          // Real stores sync to a real disk.
          testTimeout: 60_000,
          hookTimeout: 60_000,
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/e2e/**', 'tests/bench/**', ...PURE],
        },
      },
      {
        extends: true,
        test: {
          name: 'e2e',
          globalSetup: ['./tests/support/buildThreads.ts'],
          setupFiles: ['./tests/support/cheapPins.ts'],
          include: ['tests/e2e/**/*.test.ts'],
          testTimeout: 180_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
