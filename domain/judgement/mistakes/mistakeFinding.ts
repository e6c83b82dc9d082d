/** What an entry rule says: these numbers can hardly stand as typed, why, and what they may have been. Never corrected by itself. */
import type { Block } from '../../procedure/modelSheet.ts';
import { buildFinding } from '../buildFinding.ts';
import type { Finding, Suggestion, SuggestionCode } from '../finding.ts';
import { inputsOf, type Measured } from '../measured.ts';
import { proofOf } from '../proof/proofOf.ts';
import type { RunContext } from '../runContext.ts';

export type MistakeRule = {
  /** Number of the mistake it catches, in the list of `tests/catchRate/mistakes/`. */
  readonly row: number;
  readonly find: (context: RunContext) => readonly Finding[];
};

export type MistakeParts = {
  readonly code: SuggestionCode;
  readonly about: readonly Measured[];
  /** `physics`: cannot be as typed. `practice`: hardly ever is. */
  readonly from: 'physics' | 'practice';
  /** The rule in one line, with its numbers. */
  readonly rule: string;
  /** What to look at or read again. */
  readonly ask: string;
  readonly suggestions?: readonly Suggestion[];
  readonly inputs?: Readonly<Record<string, number | string>>;
  readonly blocks?: readonly Block[];
};

export function mistakeFinding(parts: MistakeParts, context: RunContext): Finding {
  const { code, about, from } = parts;
  const [first] = about;
  const point = about.length > 0 && about.every((one) => one.point === first?.point) ? (first?.point ?? null) : null;
  return buildFinding({
    subject: `mistake:${code}${point === null ? '' : `@${point}`}`,
    // The newest: reading it again, or replacing it, is what settles the question.
    readingId: newest(about)?.reading.readingId ?? null,
    verdict: 'cannot-judge',
    proof: proofOf(about, context),
    // What cannot be has to be settled before leaving; what is only odd is asked, and may be true.
    blocks: parts.blocks ?? (from === 'physics' ? ['leaving'] : []),
    basis: {
      from,
      source: from === 'practice' ? { kind: 'common-practice', source: 'entry check, thresholds our own' } : null,
      formula: parts.rule,
      inputs: { ...inputsOf(about), ...parts.inputs },
    },
    suggestions: parts.suggestions ?? [{ code, changes: [], needsNewReading: true }],
    missing: [parts.ask],
  });
}

export function newest(about: readonly Measured[]): Measured | undefined {
  return about.reduce<Measured | undefined>(
    (last, one) => (last === undefined || (one.atMs ?? 0) >= (last.atMs ?? 0) ? one : last),
    undefined,
  );
}

/** A suggestion that a key press can take over; whether it may stand without a new reading is decided at the end. */
export function change(
  code: SuggestionCode,
  ...changes: readonly (readonly [one: Measured, toOwn: number])[]
): Suggestion {
  return {
    code,
    needsNewReading: false,
    changes: changes.map(([one, toOwn]) => ({
      readingId: one.reading.readingId,
      quantity: one.quantity,
      toOwn: Number(toOwn.toPrecision(12)),
    })),
  };
}

/** Each of two readings would become what the other is. */
export function exchange(code: SuggestionCode, one: Measured, other: Measured): Suggestion {
  return change(code, [one, other.value], [other, one.value]);
}
