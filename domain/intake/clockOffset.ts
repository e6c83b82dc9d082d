/** How far an instrument's clock stands from the laptop's, from what its display shows at this moment. */
import { Temporal } from 'temporal-polyfill';
import { type ClockProblem, clockDifferences } from '../judgement/mistakes/clockDifferences.ts';

const HALF_A_DAY_S = 43_200;

/** `shown`: hours and minutes on the site's clock; taken as the moment nearest to now that has them. null: they agree. */
export function analyserClockOffset({
  shown,
  now,
  timeZone,
}: {
  readonly shown: string;
  readonly now: string;
  readonly timeZone: string;
}): ClockProblem | null {
  const here = Temporal.Instant.from(now).toZonedDateTimeISO(timeZone);
  const today = here.withPlainTime(Temporal.PlainTime.from(shown));
  const nearest = [-1, 0, 1]
    .map((days) => today.add({ days }))
    .find((one) => Math.abs(one.epochMilliseconds - here.epochMilliseconds) / 1000 <= HALF_A_DAY_S);
  const [problem] = clockDifferences([
    { clock: 'laptop', at: now },
    { clock: 'analyser', at: (nearest ?? today).toInstant().toString() },
  ]);
  return problem ?? null;
}

/** What that clock wrote down, by the laptop's. */
export function setRight(instant: string, { offsetS }: Pick<ClockProblem, 'offsetS'>): string {
  return Temporal.Instant.from(instant)
    .subtract({ seconds: Math.round(offsetS) })
    .toString();
}
