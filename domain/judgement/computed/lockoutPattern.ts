/**
 * Lockouts that come at one time of day and in the cold: the gas supply is looked at first, however good the readings are
 * at noon. Cold propane in a small or low tank cannot boil off fast enough; a regulator may ice; the main may sag.
 *
 * Source   common practice, no source: two or more lockouts within two hours of the day, all at or below 0 °C outside
 */
import { Temporal } from 'temporal-polyfill';
import type { RecordedLockout } from '../../procedure/runRecord.ts';
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import type { RunContext } from '../runContext.ts';

const FEWEST = 2;
const WINDOW_MIN = 120;
const COLD_C = 0;

export function lockoutPattern(context: RunContext): readonly Finding[] {
  const byItem = Map.groupBy(context.record.lockouts ?? [], (one) => one.itemKey);
  return [...byItem].flatMap(([itemKey, lockouts]) => patternOf(itemKey, lockouts, context));
}

function patternOf(itemKey: string, lockouts: readonly RecordedLockout[], context: RunContext): readonly Finding[] {
  const outdoorC = lockouts.flatMap((one) => one.outdoorC ?? []);
  if (lockouts.length < FEWEST || outdoorC.length === 0 || Math.max(...outdoorC) > COLD_C) return [];
  const times = lockouts.map((one) => wallTime(one, context));
  if (spreadMin(times.map(({ minuteOfDay }) => minuteOfDay)) > WINDOW_MIN) return [];
  const isTank = context.record.site.gasSupplyKind === 'tank' || context.record.fuel !== 'natural-gas';
  const allOn = context.latest('inletPressureMbarG', 'dynamic-all-on');
  const [first, last] = [times[0], times.at(-1)].map((one) => one?.text ?? '');
  const clock = times.map(({ text }) => text.slice(-5)).toSorted();
  return [
    buildFinding({
      subject: itemKey,
      verdict: 'cannot-judge',
      basis: {
        from: 'practice',
        source: {
          kind: 'common-practice',
          source: `lockouts in the cold at one time of day: look at the gas supply first (${isTank ? TANK : MAIN}); good readings now close nothing`,
        },
        formula: `${lockouts.length} lockouts from ${first} to ${last}, between ${clock[0]} and ${clock.at(-1)}, at ${degrees(Math.min(...outdoorC))} to ${degrees(Math.max(...outdoorC))} outside`,
        inputs: Object.fromEntries(
          lockouts.map((one, index) => [
            `lockout ${times[index]?.text ?? one.happenedAt}`,
            one.outdoorC ?? 'not known',
          ]),
        ),
      },
      missing: [
        allOn === undefined
          ? 'dynamic inlet pressure with every gas appliance on'
          : `the same pressure in the cold, about ${clock[0]}`,
      ],
    }),
  ];
}

const TANK = 'size and level of the tank against everything connected, regulators, cold gas boiling off too slowly';
const MAIN = 'pressure of the main at its peak, regulators, meter against everything connected';

function wallTime(one: RecordedLockout, context: RunContext): { readonly text: string; readonly minuteOfDay: number } {
  const at = Temporal.Instant.from(one.happenedAt).toZonedDateTimeISO(context.record.site.timeZone);
  return {
    text: `${at.toPlainDate().toString()} ${at.toPlainTime().toString({ smallestUnit: 'minute' })}`,
    minuteOfDay: at.hour * 60 + at.minute,
  };
}

/** Around midnight the clock goes on: 23:50 and 00:10 are twenty minutes apart. */
function spreadMin(minutes: readonly number[]): number {
  const sorted = minutes.toSorted((one, other) => one - other);
  const gaps = sorted.map((at, index) => (sorted[index + 1] ?? (sorted[0] ?? 0) + 1440) - at);
  return 1440 - Math.max(...gaps);
}

function degrees(celsius: number): string {
  return `${celsius.toFixed(0).replace('-', '−')} °C`;
}
