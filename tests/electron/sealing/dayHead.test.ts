import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sealHash } from '../../../electron/sealing/canonicalJson.ts';
import { brokenDays, type ClosedDay, dayHead, type SealOfDay } from '../../../electron/sealing/dayHead.ts';

const sealOf = (visitId: string, sequence = 1): SealOfDay => ({
  visitId,
  sequence,
  sha256: sealHash(`${visitId} ${sequence}`),
});

/** Closed as the program does it: each time over all that was sealed on the day by then. */
function closed(days: readonly (readonly [string, readonly SealOfDay[]])[]): readonly ClosedDay[] {
  const heads: ClosedDay[] = [];
  for (const [day, seals] of days)
    heads.push({ day, sealCount: seals.length, sha256: dayHead(day, seals, heads.at(-1)?.sha256 ?? null) });
  return heads;
}

describe('heads of days', () => {
  it('is the SHA-256 of its canonical JSON, written out by hand', () => {
    const text = `{"day":"2026-03-02","previousSha256":null,"schema":"lightoff.day/1","seals":[{"sequence":"1","sha256":"${sealHash('v 1')}","visitId":"v"}]}`;
    expect(dayHead('2026-03-02', [sealOf('v')], null)).toBe(sealHash(text));
  });

  it('takes a day that is closed again, where the clock was set back, as whole', () => {
    const [a, b, c] = [sealOf('a'), sealOf('b'), sealOf('c')];
    const heads = closed([
      ['2026-03-02', [a]],
      ['2026-03-03', [b]],
      ['2026-03-02', [a, c]],
    ]);
    const seals: Record<string, readonly SealOfDay[]> = { '2026-03-02': [a, c], '2026-03-03': [b] };
    expect(brokenDays(heads, (day) => seals[day] ?? [])).toEqual([]);
    expect(brokenDays(heads.slice(0, 2), (day) => seals[day] ?? [])).toEqual(['2026-03-02']);
  });

  it('notices any record that is gone, altered, put in or moved, and any head that is gone', () => {
    const days = fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 5 });
    const change = fc.constantFrom('gone', 'altered', 'put in', 'head gone' as const);
    fc.assert(
      fc.property(days, change, fc.nat(), (counts, what, pick) => {
        const sealed = counts.map(
          (count, index) =>
            [
              `2026-03-${String(index + 1).padStart(2, '0')}`,
              Array.from({ length: count }, (_, at) => sealOf(`v${index}.${at}`)),
            ] as const,
        );
        const heads = closed(sealed);
        const seals = new Map<string, readonly SealOfDay[]>(sealed);
        const sealsOf = (day: string) => seals.get(day) ?? [];
        expect(brokenDays(heads, sealsOf)).toEqual([]);
        const [day, own] = sealed[pick % sealed.length] ?? expect.unreachable();
        const at = pick % own.length;
        if (what === 'gone') seals.set(day, own.toSpliced(at, 1));
        if (what === 'altered') seals.set(day, own.with(at, sealOf('another')));
        if (what === 'put in') seals.set(day, own.toSpliced(at, 0, sealOf('another')));
        // The last head may go: nothing was closed over it yet.
        const left = what === 'head gone' ? heads.toSpliced(pick % heads.length, 1) : heads;
        const isLast = what === 'head gone' && pick % heads.length === heads.length - 1;
        expect(brokenDays(left, sealsOf).length > 0).toBe(!isLast);
      }),
      { numRuns: 300 },
    );
  });
});
