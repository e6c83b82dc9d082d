import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applySheetEdit, type Json, type SheetEdit } from '../../../domain/procedure/sheetEdit.ts';
import { compareRevisions, nextRevision } from '../../../domain/procedure/sheetRevision.ts';

const body: Json = { title: 'A', limits: [{ max: 1 }, { max: 2 }, { max: 3 }], appliance: { ventMaxC: null } };

function edited(edit: SheetEdit): Json {
  const changed = applySheetEdit(body, edit);
  if (!changed.ok) throw new Error(changed.error);
  return changed.value;
}

describe('applySheetEdit', () => {
  it('sets, unsets, inserts, removes and moves, and leaves what it was given alone', () => {
    const before = JSON.stringify(body);
    expect(edited({ kind: 'set', path: ['limits', 1, 'max'], value: 5 })).toMatchObject({
      limits: [{ max: 1 }, { max: 5 }, { max: 3 }],
    });
    expect(edited({ kind: 'set', path: ['appliance', 'ventMaxC'], value: '80x' })).toMatchObject({
      appliance: { ventMaxC: '80x' },
    });
    expect(edited({ kind: 'unset', path: ['limits', 0, 'max'] })).toMatchObject({
      limits: [{}, { max: 2 }, { max: 3 }],
    });
    expect(edited({ kind: 'insert', path: ['limits'], at: 3, value: { max: 4 } })).toMatchObject({
      limits: [{ max: 1 }, { max: 2 }, { max: 3 }, { max: 4 }],
    });
    expect(edited({ kind: 'remove', path: ['limits'], at: 0 })).toMatchObject({ limits: [{ max: 2 }, { max: 3 }] });
    expect(edited({ kind: 'move', path: ['limits'], at: 2, to: 0 })).toMatchObject({
      limits: [{ max: 3 }, { max: 1 }, { max: 2 }],
    });
    expect(JSON.stringify(body)).toBe(before);
  });

  it.each<[string, SheetEdit]>([
    ['a list that is none', { kind: 'insert', path: ['title'], at: 0, value: 1 }],
    ['behind the end', { kind: 'remove', path: ['limits'], at: 3 }],
    ['a move out of the list', { kind: 'move', path: ['limits'], at: 0, to: 3 }],
    ['a part that is not there', { kind: 'set', path: ['cover', 'terms'], value: [] }],
    ['an inherited name', { kind: 'set', path: ['constructor', 'x'], value: 1 }],
    ['the prototype', { kind: 'set', path: ['__proto__'], value: {} }],
    ['a number as a name', { kind: 'set', path: ['appliance', 0], value: 1 }],
  ])('finds no place for %s', (_what, edit) => {
    expect(applySheetEdit(body, edit)).toEqual({ ok: false, error: 'no-such-place' });
  });

  it('moves back to where it was', () => {
    fc.assert(
      fc.property(fc.nat({ max: 2 }), fc.nat({ max: 2 }), (at, to) => {
        const moved = edited({ kind: 'move', path: ['limits'], at, to });
        expect(applySheetEdit(moved, { kind: 'move', path: ['limits'], at: to, to: at })).toEqual({
          ok: true,
          value: body,
        });
      }),
    );
  });
});

describe('revisions', () => {
  it('count within a month as numbers', () => {
    expect(compareRevisions('2026-03.10', '2026-03.2')).toBeGreaterThan(0);
    expect(compareRevisions('2026-03', '2026-03.2')).toBeLessThan(0);
    expect(compareRevisions('2026-12', '2027-01')).toBeLessThan(0);
  });

  it('go on from the newest there is', () => {
    expect(nextRevision([], '2026-03-02')).toBe('2026-03');
    expect(nextRevision(['2025-09'], '2026-03-02')).toBe('2026-03');
    expect(nextRevision(['2026-03'], '2026-03-02')).toBe('2026-03.2');
    expect(nextRevision(['2026-03.9', '2026-03.10'], '2026-03-02')).toBe('2026-03.11');
    // Issued with a date still to come: the next one follows it all the same.
    expect(nextRevision(['2026-11'], '2026-03-02')).toBe('2026-11.2');
  });
});
