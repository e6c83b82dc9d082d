import { describe, expect, it } from 'vitest';
import { SYSTEM_PRESSURE, WHOLE_DIFFERENCE, WHOLE_TEMPERATURE } from '../../../renderer/worksheets/core/measures.ts';
import { atLeast, atMost, between } from '../../../renderer/worksheets/core/usual.ts';
import { figureText } from '../../../renderer/worksheets/UsualFigures.tsx';
import { WORKSHEETS } from '../../../renderer/worksheets/worksheets.ts';

const TABLES = WORKSHEETS.flatMap(({ key, usual = [] }) => usual.map((table) => ({ key, table })));

describe('usual figures', () => {
  it('are shown in the units of the reader, a difference as one', () => {
    expect(figureText(between(WHOLE_TEMPERATURE, [60, 82]), 'metric')).toBe('60–82 °C');
    expect(figureText(between(WHOLE_TEMPERATURE, [60, 82]), 'us')).toBe('140–180 °F');
    expect(figureText(between(WHOLE_DIFFERENCE, [10, 20]), 'us')).toBe('18–36 °F');
    expect(figureText(between(WHOLE_DIFFERENCE, [20 / 1.8, 20 / 1.8]), 'us')).toBe('20 °F');
    expect(figureText(atLeast(SYSTEM_PRESSURE, 0.3), 'metric')).toBe('from 0.30 bar');
    expect(figureText(atMost(WHOLE_TEMPERATURE, 55), 'metric')).toBe('up to 55 °C');
    expect(figureText(null, 'metric')).toBe('');
  });

  it('stand beside eight worksheets at least', () => {
    expect(new Set(TABLES.map(({ key }) => key)).size).toBeGreaterThanOrEqual(8);
  });

  it.each(TABLES)('of $key, “$table.title”: each row has its columns and a label of its own', ({ table }) => {
    expect(table.rows.length).toBeGreaterThan(0);
    expect(new Set(table.rows.map(({ label }) => label)).size).toBe(table.rows.length);
    for (const { label, figures } of table.rows) {
      expect(label).not.toBe('');
      expect(figures).toHaveLength(table.columns.length);
      for (const figure of figures) {
        for (const system of ['metric', 'us'] as const) expect(figureText(figure, system)).not.toMatch(/NaN|undefined/);
      }
    }
  });
});
