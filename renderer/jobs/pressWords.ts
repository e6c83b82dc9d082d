/** What makes a waiting job press, in words: as on the board, so in the list. */
import { dayWords } from '../kit/dayWords.ts';
import { daysBetween } from '../visits/week.ts';

/** Sooner than this it is said with a mark. */
const PRESSES_WITHIN_DAYS = 14;

type WaitingJob = {
  readonly priority: number;
  readonly latestOn: string | null;
  readonly latestWhy: string | null;
  readonly wantedToOn: string | null;
};

export function pressWords(
  job: WaitingJob,
  today: string,
): { readonly words: string | null; readonly isUrgent: boolean } {
  if (job.priority >= 3) return { words: 'before everything else', isUrgent: true };
  if (job.latestOn !== null) {
    const left = daysBetween(today, job.latestOn);
    const words = left < 0 ? `latest day was ${dayWords(job.latestOn)}` : `latest ${dayWords(job.latestOn)}`;
    return {
      words: job.latestWhy === null ? words : `${words}: ${job.latestWhy}`,
      isUrgent: left <= PRESSES_WITHIN_DAYS,
    };
  }
  if (job.wantedToOn !== null) return { words: `wanted by ${dayWords(job.wantedToOn)}`, isUrgent: false };
  return { words: job.priority === 2 ? 'soon' : null, isUrgent: false };
}
