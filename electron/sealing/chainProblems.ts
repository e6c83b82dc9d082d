/** Recomputes a visit's chain of sealed records and says, entry by entry, what does not fit. */
import { canonicalJson, sealHash } from './canonicalJson.ts';
import { commitTo, listCommitments } from './commitment.ts';
import { parseJsonStrictly } from './parseJsonStrictly.ts';
import { type SealedRecord, sealedRecord } from './sealedRecord.ts';

export type ChainEntry = {
  readonly sealId: string;
  readonly visitId: string;
  readonly runId: string;
  readonly sequence: number;
  readonly kind: string;
  /** Exactly the text that was hashed. */
  readonly canonical: string;
  readonly sha256: string;
  readonly previousSha256: string | null;
};

/** Salt and value are null once the person has been erased. */
export type ChainDisclosure = {
  readonly sealId: string;
  readonly path: string;
  readonly salt: string | null;
  readonly value: string | null;
};

export type ChainProblem =
  | { readonly code: 'bytes-altered' }
  | { readonly code: 'not-canonical' }
  | { readonly code: 'not-a-record'; readonly detail: string }
  /** The row's own columns say something else than the record it holds. */
  | { readonly code: 'row-differs'; readonly field: 'visitId' | 'runId' | 'sequence' | 'kind' | 'previousSha256' }
  | { readonly code: 'wrong-sequence'; readonly expected: number }
  | { readonly code: 'wrong-previous'; readonly expected: string | null }
  | { readonly code: 'other-visit' }
  | { readonly code: 'amends-unknown' }
  | { readonly code: 'disclosure-differs'; readonly path: string }
  | { readonly code: 'disclosure-without-commitment'; readonly path: string };

export type EntryProblems = {
  readonly sealId: string;
  readonly sequence: number;
  readonly problems: readonly ChainProblem[];
};

/** One answer per entry, in the order of the chain; an empty list of problems means that nothing was found. */
export function chainProblems(
  entries: readonly ChainEntry[],
  disclosures: readonly ChainDisclosure[],
): readonly EntryProblems[] {
  const ordered = entries.toSorted((a, b) => a.sequence - b.sequence);
  const hashesBefore = new Set<string>();
  return ordered.map((entry, index) => {
    const before = ordered[index - 1];
    // The recomputed hash, not the stored one: an altered entry must not vouch for itself.
    const previousSha256 = before ? sealHash(before.canonical) : null;
    const own = disclosures.filter((one) => one.sealId === entry.sealId);
    const problems = [
      ...placeProblems(entry, index + 1, previousSha256, ordered[0]?.visitId ?? entry.visitId),
      ...recordProblems(entry, own, hashesBefore),
    ];
    hashesBefore.add(sealHash(entry.canonical));
    return { sealId: entry.sealId, sequence: entry.sequence, problems };
  });
}

function placeProblems(
  entry: ChainEntry,
  expectedSequence: number,
  previousSha256: string | null,
  visitId: string,
): readonly ChainProblem[] {
  const problems: ChainProblem[] = [];
  if (sealHash(entry.canonical) !== entry.sha256) problems.push({ code: 'bytes-altered' });
  if (entry.sequence !== expectedSequence) problems.push({ code: 'wrong-sequence', expected: expectedSequence });
  if (entry.previousSha256 !== previousSha256) problems.push({ code: 'wrong-previous', expected: previousSha256 });
  if (entry.visitId !== visitId) problems.push({ code: 'other-visit' });
  return problems;
}

function recordProblems(
  entry: ChainEntry,
  disclosures: readonly ChainDisclosure[],
  hashesBefore: ReadonlySet<string>,
): readonly ChainProblem[] {
  const parsed = readSealedRecord(entry.canonical);
  if (!parsed.ok) return [parsed.problem];
  const { record } = parsed;
  return [
    ...rowProblems(entry, record),
    ...(record.seal.amends && !hashesBefore.has(record.seal.amends.sha256)
      ? [{ code: 'amends-unknown' } as const]
      : []),
    ...disclosureProblems(record, disclosures),
  ];
}

function rowProblems(entry: ChainEntry, record: SealedRecord): readonly ChainProblem[] {
  const differs: ChainProblem[] = [];
  const compare = (field: 'visitId' | 'runId' | 'sequence' | 'kind' | 'previousSha256', same: boolean): void => {
    if (!same) differs.push({ code: 'row-differs', field });
  };
  compare('visitId', entry.visitId === record.visit.visitId);
  compare('runId', entry.runId === record.run.runId);
  compare('sequence', String(entry.sequence) === record.seal.sequence);
  compare('kind', entry.kind === record.seal.kind);
  compare('previousSha256', entry.previousSha256 === record.seal.previousSha256);
  return differs;
}

/** A disclosure that was emptied, or is gone altogether, is an erased person and no problem. */
export function disclosureProblems(
  record: unknown,
  disclosures: readonly Omit<ChainDisclosure, 'sealId'>[],
): readonly ChainProblem[] {
  const commitments = listCommitments(record);
  const problems: ChainProblem[] = [];
  for (const { path, salt, value } of disclosures) {
    const expected = commitments.get(path);
    if (expected === undefined) problems.push({ code: 'disclosure-without-commitment', path });
    else if ((salt === null) !== (value === null)) problems.push({ code: 'disclosure-differs', path });
    else if (salt !== null && value !== null && safeCommitment(salt, path, value) !== expected) {
      problems.push({ code: 'disclosure-differs', path });
    }
  }
  return problems;
}

function safeCommitment(salt: string, path: string, value: string): string | null {
  try {
    return commitTo(salt, path, value).commitment;
  } catch {
    return null;
  }
}

/** Only the canonical text of a record counts as that record. */
export function readSealedRecord(
  text: string,
): { readonly ok: true; readonly record: SealedRecord } | { readonly ok: false; readonly problem: ChainProblem } {
  const json = parseJsonStrictly(text);
  if (!json.ok) return { ok: false, problem: { code: 'not-a-record', detail: json.error.code } };
  const parsed = sealedRecord.safeParse(json.value);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    return {
      ok: false,
      problem: { code: 'not-a-record', detail: `/${issue?.path.join('/') ?? ''}: ${issue?.message ?? ''}` },
    };
  }
  if (canonicalJson(json.value) !== text) return { ok: false, problem: { code: 'not-canonical' } };
  return { ok: true, record: parsed.data };
}
