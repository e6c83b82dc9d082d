/** The demo is always about today: every day in its data goes along, and no day hides where it would stay behind. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { moveDays } from '../../../electron/demo/moveDays.ts';
import { APP_ROOT } from '../../support/testCore.ts';

const readText = (name: string): string => readFileSync(join(APP_ROOT, 'assets/demo', name), 'utf8');

describe('the days of the demo', () => {
  it('move by whole days, times staying, and nothing else changes', () => {
    const written = {
      on: '2026-02-27',
      at: '2026-03-02T13:05:00.000Z',
      text: 'R-2026-03-02',
      count: 20260302,
      none: null,
    };
    expect(moveDays(written, '2026-03-02', '2026-03-05T23:59:00.000Z')).toEqual({
      ...written,
      on: '2026-03-02',
      at: '2026-03-05T13:05:00.000Z',
    });
  });

  it.each(['scenario.json', 'startup-run.json'])('in %s all are such as move', (name) => {
    const days = readText(name).match(/"[^"]*\b(19|20)\d\d[-/.]\d\d?[-/.]\d\d?[^"]*"/g) ?? [];
    expect(days.length).toBeGreaterThan(1);
    expect(days.filter((text) => !/^"\d{4}-\d{2}-\d{2}(T[\d:.]+Z)?"$/.test(text))).toEqual([]);
  });

  it('has the next service and the first-year check of the startup counted from it', () => {
    const written = JSON.parse(readText('startup-run.json')) as { startedAt: string; answers: Record<string, string> };
    const moved = moveDays(written, written.startedAt, '2028-11-30T15:00:00.000Z');
    expect(moved.startedAt.slice(0, 10)).toBe('2028-11-30');
    // Within the year after the startup, which here has no 29 February.
    expect(moved.answers['next-service']).toBe('2029-11-15');
    expect(moved.answers['first-year-check']).toBe('2029-05-31');
  });
});
