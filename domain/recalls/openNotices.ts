/**
 * The notices that stand against one appliance: what its maker or an authority asks for, and nobody has settled here. What
 * the owner does not want done stays open, and so does one whose letters are no longer sent: neither makes the boiler safe.
 */
import { type RecallDoubt, type RecallRule, type RecallSubject, recallMatch } from './recallMatch.ts';

export const RECALL_OUTCOMES = ['done', 'not-affected', 'refused'] as const;
export type RecallOutcome = (typeof RECALL_OUTCOMES)[number];

export type Notice = RecallRule & {
  readonly recallId: string;
  readonly title: string;
  readonly number: string | null;
  readonly source: string;
  readonly whatToDo: string;
  /** It informs, or asks for work at the next visit: the boiler may run until it is settled. */
  readonly mayFire: boolean;
};

export type OpenNotice = {
  readonly recallId: string;
  readonly title: string;
  readonly number: string | null;
  readonly source: string;
  /** In the notice's own words. */
  readonly whatToDo: string;
  /** Why it can't be told from the files whether it is about this appliance; it counts until somebody has looked. */
  readonly doubts: readonly RecallDoubt[];
  /** The owner does not want it done. */
  readonly isRefused: boolean;
  readonly mayFire: boolean;
};

/** Those that keep the boiler off until they are settled. */
export function stoppingNotices<N extends Pick<OpenNotice, 'mayFire'>>(notices: readonly N[]): readonly N[] {
  return notices.filter(({ mayFire }) => !mayFire);
}

export function openNotices(
  notices: readonly Notice[],
  appliance: RecallSubject,
  outcomes: ReadonlyMap<string, RecallOutcome>,
): readonly OpenNotice[] {
  return notices.flatMap((notice) => {
    const outcome = outcomes.get(notice.recallId) ?? null;
    if (outcome === 'done' || outcome === 'not-affected') return [];
    const match = recallMatch(notice, appliance);
    if (match === null) return [];
    const { recallId, title, number, source, whatToDo, mayFire } = notice;
    const isRefused = outcome === 'refused';
    return [{ recallId, title, number, source, whatToDo, mayFire, doubts: match.doubts, isRefused }];
  });
}
