import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverRevision, oldestFirst, type SheetIssue } from '../../../domain/coverage/coverRevision.ts';
import type { KnownDate } from '../../../domain/coverage/knownDate.ts';

const issues = (...revisions: readonly string[]): readonly SheetIssue[] =>
  oldestFirst(revisions.map((revision) => ({ id: revision, revision })));
const day = (kind: KnownDate['kind'], on: string, precision: KnownDate['precision'] = 'day'): KnownDate => ({
  kind,
  on,
  precision,
});
const chosen = (revisions: readonly string[], dates: readonly KnownDate[], startedWithId: string | null = null) =>
  coverRevision({ issues: issues(...revisions), startedWithId, dates });

describe('whose terms count for a boiler', () => {
  it.each([
    ['those it was started up with', [day('started', '2026-05-02')], '2024-01', '2024-01', 'started-with'],
    ['a sheet it no longer has counts for nothing', [day('started', '2026-05-02')], 'other', '2026-03.10', 'in-force'],
    ['the newest of the month it was put in', [day('installed', '2026-03-01')], null, '2026-03.10', 'in-force'],
    [
      'the day it was put in goes before that of the startup',
      [day('started', '2026-05-02'), day('installed', '2025-12-30')],
      null,
      '2024-01',
      'in-force',
    ],
    [
      'sold, where nothing else is known',
      [day('sold', '2026-02-28'), day('made', '2026-04-01')],
      null,
      '2024-01',
      'in-force',
    ],
    ['a year alone may be its end', [day('started', '2026', 'year')], null, '2026-09', 'in-force'],
    ['a month alone', [day('started', '2026-04', 'month')], null, '2026-03.10', 'in-force'],
    ['all on file are later', [day('started', '2019-06-11')], null, '2024-01', 'oldest'],
    ['nobody knows its days', [], null, '2026-09', 'newest'],
  ] as const)('%s', (_, dates, startedWithId, id, reason) => {
    expect(chosen(['2026-09', '2026-03.10', '2026-03.2', '2024-01'], dates, startedWithId)).toEqual({ id, reason });
  });

  it('is nobody’s without a sheet', () => {
    expect(chosen([], [day('started', '2026-05-02')])).toBeNull();
  });

  it('never changes for a boiler whose day is known when a later revision comes', () => {
    const month = fc
      .record({ year: fc.integer({ min: 2015, max: 2030 }), month: fc.integer({ min: 1, max: 12 }) })
      .map((one) => `${one.year}-${String(one.month).padStart(2, '0')}`);
    fc.assert(
      fc.property(fc.uniqueArray(month, { minLength: 1, maxLength: 6 }), month, month, (revisions, putIn, later) => {
        const newest = revisions.toSorted().at(-1) ?? '';
        fc.pre(later > newest && later > putIn);
        const dates = [day('installed', `${putIn}-15`)];
        expect(chosen([...revisions, later], dates)).toEqual(chosen(revisions, dates));
      }),
    );
  });
});
