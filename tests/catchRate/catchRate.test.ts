/** The short form of `npm run catch-rate`: fewer sets, the same promises, row by row. */
import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { CATCH_TARGET_SHARE, type CatchRate, FALSE_ALARM_TARGET_SHARE, measureCatchRate } from './measureCatchRate.ts';
import { MISTAKES } from './mistakes/allMistakes.ts';

const SETS = 2000;
let rate: CatchRate;

beforeAll(() => {
  rate = measureCatchRate({ seed: 20_261_006, mistakenSets: SETS, cleanSets: SETS });
}, 120_000);

describe('catch rate', () => {
  it('has all thirty-five rows, each injected and each catchable somewhere', () => {
    expect(MISTAKES.map(({ row }) => row)).toEqual(Array.from({ length: 35 }, (_, index) => index + 1));
    for (const row of rate.rows) expect(row.catchable, row.title).toBeGreaterThan(10);
    expect(rate.rows.reduce((sum, { injected }) => sum + injected, 0)).toBe(SETS);
  });

  it.each(MISTAKES.map(({ row, title }, index) => [row, title, index] as const))(
    'row %d, %s: caught where it is catchable',
    (_row, _title, index) => {
      const row = rate.rows[index];
      expect((row?.caughtOfCatchable ?? 0) / (row?.catchable ?? 1)).toBeGreaterThanOrEqual(CATCH_TARGET_SHARE);
    },
  );

  it('raises few questions about clean sets', () => {
    expect(rate.falseAlarms / rate.cleanSets).toBeLessThanOrEqual(FALSE_ALARM_TARGET_SHARE);
  });

  it('is drawn by a generator that knows nothing of the judgement', () => {
    const folder = new URL('.', import.meta.url);
    const generator = [
      ...readdirSync(folder).filter((name) => !/^(measureCatchRate|questionsRaised|catchRate\.test)\.?/.test(name)),
      ...readdirSync(new URL('mistakes/', folder)).map((name) => `mistakes/${name}`),
    ].filter((name) => name.endsWith('.ts'));
    expect(generator.length).toBeGreaterThanOrEqual(12);
    for (const name of generator) {
      expect(readFileSync(new URL(name, folder), 'utf8'), name).not.toMatch(
        /domain\/judgement|questionsRaised|measureCatchRate/,
      );
    }
  });
});
