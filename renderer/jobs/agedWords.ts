/** Readiness that was answered long ago, in words. */
import type { AgedAnswer } from '../../domain/procedure/agedReadiness.ts';
import { readinessLabel } from '../../domain/procedure/readiness.ts';

/** In one line among others; the visit and the job name them all. */
const NAMED_IN_A_LINE = 3;

/** What was asked on one day is said together: a call goes through the whole list. */
export function agedWords(answers: readonly AgedAnswer[], mostNamed = NAMED_IN_A_LINE): string {
  return [...Map.groupBy(answers, ({ askedDaysAgo }) => askedDaysAgo)]
    .toSorted(([a], [b]) => b - a)
    .map(([days, list]) => {
      const names = [...new Set(list.map(({ itemKey }) => shortLabel(itemKey)))];
      const more = names.length - mostNamed;
      const named = names.slice(0, mostNamed).join(', ');
      return `${named}${more > 0 ? ` and ${more} more` : ''} (asked ${days} days ago)`;
    })
    .join('; ');
}

/** The label up to where it goes into detail: "Gas live: meter set, pipe tested" is "Gas live". */
function shortLabel(itemKey: string): string {
  return readinessLabel(itemKey).split(/[:,]/)[0] ?? itemKey;
}
