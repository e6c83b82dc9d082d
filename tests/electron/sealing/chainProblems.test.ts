import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { buildSealedRecord } from '../../../electron/sealing/buildSealedRecord.ts';
import { canonicalJson, sealHash } from '../../../electron/sealing/canonicalJson.ts';
import {
  type ChainDisclosure,
  type ChainEntry,
  type ChainProblem,
  chainProblems,
} from '../../../electron/sealing/chainProblems.ts';
import { sampleRecordInput, sampleSalts, sampleSeal } from '../../support/recordSample.ts';

// Whole documents and chains on a machine that is busy with other tests.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

function sampleChain(): { entries: ChainEntry[]; disclosures: ChainDisclosure[] } {
  const entries: ChainEntry[] = [];
  const disclosures: ChainDisclosure[] = [];
  for (const sequence of [1, 2, 3]) {
    const previousSha256 = entries.at(-1)?.sha256 ?? null;
    const first = entries[0]?.sha256;
    const built = buildSealedRecord(
      {
        ...sampleRecordInput(),
        seal: sampleSeal({
          sequence,
          previousSha256,
          kind: sequence === 1 ? 'sealed' : 'amendment',
          amends: first === undefined ? null : { sha256: first, reason: `Correction ${sequence}: gauge read again` },
        }),
      },
      sampleSalts(`entry-${sequence}`),
    );
    const canonical = canonicalJson(built.record);
    const sealId = `seal-${sequence}`;
    entries.push({
      sealId,
      visitId: built.record.visit.visitId,
      runId: built.record.run.runId,
      sequence,
      kind: built.record.seal.kind,
      canonical,
      sha256: sealHash(canonical),
      previousSha256,
    });
    disclosures.push(...built.disclosures.map((one) => ({ sealId, path: one.path, salt: one.salt, value: one.value })));
  }
  return { entries, disclosures };
}

const chain = sampleChain();

function problemsOf(entries: readonly ChainEntry[], disclosures = chain.disclosures): readonly ChainProblem[] {
  return chainProblems(entries, disclosures).flatMap((entry) => entry.problems);
}

function altered(index: number, change: Partial<ChainEntry>): ChainEntry[] {
  return chain.entries.map((entry, at) => (at === index ? { ...entry, ...change } : entry));
}

function codes(problems: readonly ChainProblem[]): readonly string[] {
  return problems.map((problem) => problem.code);
}

describe('chainProblems', () => {
  it('finds nothing in a chain as it was sealed, in whatever order it comes', () => {
    expect(problemsOf(chain.entries)).toEqual([]);
    expect(problemsOf(chain.entries.toReversed())).toEqual([]);
    expect(chainProblems(chain.entries, chain.disclosures).map((one) => one.sequence)).toEqual([1, 2, 3]);
  });

  it('should notice any single byte that was flipped in any record', () => {
    fc.assert(
      fc.property(fc.nat(2), fc.nat(), fc.integer({ min: 1, max: 255 }), (index, position, flip) => {
        const bytes = new TextEncoder().encode(chain.entries[index]?.canonical ?? '');
        const at = position % bytes.length;
        bytes[at] = (bytes[at] ?? 0) ^ flip;
        const canonical = new TextDecoder().decode(bytes);
        const found = chainProblems(altered(index, { canonical }), chain.disclosures);
        expect(codes(found[index]?.problems ?? [])).toContain('bytes-altered');
        // Whoever comes after it no longer fits either.
        if (index < 2) expect(codes(found[index + 1]?.problems ?? [])).toContain('wrong-previous');
      }),
      { numRuns: 60 },
    );
  });

  it('should notice any digit that was changed in a stored hash', () => {
    fc.assert(
      fc.property(fc.nat(2), fc.nat(63), fc.constantFrom(...'0123456789abcdef'), (index, at, digit) => {
        const hash = chain.entries[index]?.sha256 ?? '';
        fc.pre(hash[at] !== digit);
        const sha256 = hash.slice(0, at) + digit + hash.slice(at + 1);
        expect(codes(problemsOf(altered(index, { sha256 })))).toContain('bytes-altered');
        if (index > 0) {
          expect(codes(problemsOf(altered(index, { previousSha256: sha256 })))).toContain('wrong-previous');
        }
      }),
      { numRuns: 20 },
    );
  });

  it('notices a record that was rewritten together with its hash', () => {
    const canonical = (chain.entries[1]?.canonical ?? '').replace('"121"', '"230"');
    const found = chainProblems(altered(1, { canonical, sha256: sealHash(canonical) }), chain.disclosures);
    expect(found[1]?.problems).toEqual([]);
    expect(codes(found[2]?.problems ?? [])).toEqual(['wrong-previous']);
  });

  it('notices an entry that is gone, doubled or renumbered', () => {
    expect(codes(problemsOf(chain.entries.slice(1)))).toEqual(
      expect.arrayContaining(['wrong-sequence', 'wrong-previous', 'amends-unknown']),
    );
    expect(codes(problemsOf([chain.entries[0], chain.entries[2]].flatMap((one) => one ?? [])))).toContain(
      'wrong-sequence',
    );
    expect(codes(problemsOf([...chain.entries, ...chain.entries.slice(2)]))).toContain('wrong-sequence');
    expect(codes(problemsOf(altered(2, { sequence: 4 })))).toEqual(
      expect.arrayContaining(['wrong-sequence', 'row-differs']),
    );
  });

  it('notices a row that says something else than its record', () => {
    expect(problemsOf(altered(0, { runId: 'another' }))).toContainEqual({ code: 'row-differs', field: 'runId' });
    expect(problemsOf(altered(1, { kind: 'sealed' }))).toContainEqual({ code: 'row-differs', field: 'kind' });
    expect(codes(problemsOf(altered(1, { visitId: 'another' })))).toContain('other-visit');
  });

  it('takes only the canonical text', () => {
    const canonical = `${chain.entries[2]?.canonical} `;
    expect(codes(problemsOf(altered(2, { canonical, sha256: sealHash(canonical) })))).toEqual(['not-canonical']);
  });

  it.each([
    ['{"schema":"lightoff.record/1"}', 'not-a-record'],
    ['{"a":1,"a":1}', 'not-a-record'],
    ['[', 'not-a-record'],
  ])('says that %s is no record', (canonical, code) => {
    expect(codes(problemsOf(altered(2, { canonical, sha256: sealHash(canonical) })))).toContain(code);
  });

  it('should stay verifiable whoever is erased', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(chain.disclosures.length - 1)), fc.boolean(), (erasedAt, isRowKept) => {
        const erased = new Set(erasedAt);
        const left = chain.disclosures.flatMap((one, index) => {
          if (!erased.has(index)) return [one];
          return isRowKept ? [{ ...one, salt: null, value: null }] : [];
        });
        expect(problemsOf(chain.entries, left)).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });

  it('should notice any change of what is behind a commitment', () => {
    fc.assert(
      fc.property(fc.nat(chain.disclosures.length - 1), fc.string(), (index, value) => {
        fc.pre(chain.disclosures[index]?.value !== value);
        const forged = chain.disclosures.map((one, at) => (at === index ? { ...one, value } : one));
        expect(codes(problemsOf(chain.entries, forged))).toEqual(['disclosure-differs']);
      }),
      { numRuns: 25 },
    );
  });

  it('notices a value that was moved to another place, or kept without its salt', () => {
    const [first] = chain.disclosures;
    if (!first) throw new Error('the sample has disclosures');
    const rest = chain.disclosures.slice(1);
    expect(codes(problemsOf(chain.entries, [{ ...first, salt: null }, ...rest]))).toEqual(['disclosure-differs']);
    expect(codes(problemsOf(chain.entries, [{ ...first, path: '/company/name' }, ...rest]))).toEqual([
      'disclosure-without-commitment',
    ]);
  });
});
