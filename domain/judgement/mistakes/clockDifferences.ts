/** The same moment by several clocks. The laptop's is set right by what the others agree on, and the offset recorded. */

export type ClockStamp = { readonly clock: 'laptop' | 'camera' | 'analyser'; readonly at: string };

export type ClockProblem = {
  readonly code: 'clock-differs';
  readonly clock: ClockStamp['clock'];
  /** This clock minus the laptop's. */
  readonly offsetS: number;
  /** Whole or half hours away: a time zone or summer time rather than a clock that runs wrong. */
  readonly isTimeZone: boolean;
};

/** Handling a camera or reading an analyser takes this long. */
const SAME_MOMENT_S = 300;
const HALF_HOUR_S = 1800;

/** `stamps` are of one event: a photo taken, a sample saved. */
export function clockDifferences(stamps: readonly ClockStamp[]): readonly ClockProblem[] {
  const laptopMs = Date.parse(stamps.find(({ clock }) => clock === 'laptop')?.at ?? '');
  if (Number.isNaN(laptopMs)) return [];
  return stamps.flatMap(({ clock, at }) => {
    const offsetS = (Date.parse(at) - laptopMs) / 1000;
    if (clock === 'laptop' || !(Math.abs(offsetS) > SAME_MOMENT_S)) return [];
    const fromHalfHourS = Math.abs(offsetS - Math.round(offsetS / HALF_HOUR_S) * HALF_HOUR_S);
    return [{ code: 'clock-differs', clock, offsetS, isTimeZone: fromHalfHourS <= SAME_MOMENT_S }];
  });
}
