/** Whether something with a last day (a licence, a calibration) is in date: words first, tone second. */
import { dayWords } from '../kit/dayWords.ts';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { daysBetween } from '../visits/week.ts';

/** Common practice, no source: a renewal takes weeks, so it is said two months ahead. */
const SOON_DAYS = 60;

export function InDate({ from = null, to }: { readonly from?: string | null; readonly to: string | null }) {
  const { today } = useAppStatus();
  if (to === null) {
    return (
      <span className="lo-verdict" data-tone="good">
        no end
      </span>
    );
  }
  const left = daysBetween(today, to);
  const [tone, words] =
    from !== null && daysBetween(today, from) > 0
      ? (['doubt', `not before ${dayWords(from)}`] as const)
      : left < 0
        ? (['bad', `ran out on ${dayWords(to)}`] as const)
        : left <= SOON_DAYS
          ? (['doubt', `in date, runs out in ${left === 1 ? '1 day' : `${left} days`}`] as const)
          : (['good', `in date until ${dayWords(to)}`] as const);
  return (
    <span className="lo-verdict" data-tone={tone}>
      {words}
    </span>
  );
}
