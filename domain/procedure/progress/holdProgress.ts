/** A timed wait: over when its time has passed since the stored start, whatever ran or slept in between. */
import type { ItemOf } from '../modelSheet.ts';
import { secondsBetween, secondsLeft } from './instants.ts';
import { answeredAt, type ItemContext, notPossible, type OwnProgress, openBecause } from './itemContext.ts';

export function holdProgress(item: ItemOf<'hold'>, context: ItemContext): OwnProgress {
  const hold = context.byItem.hold(item.key);
  if (hold === undefined) return notPossible(item, context) ?? openBecause({ code: 'not-answered' });
  const totalS = Math.max(item.seconds, hold.requiredS);
  if (hold.clockJumped) return openBecause({ code: 'clock-jumped' });
  if (hold.endedAt !== null) {
    const ranS = secondsBetween(hold.startedAt, hold.endedAt);
    return ranS >= totalS ? answeredAt(hold.endedAt) : openBecause({ code: 'hold-ended-early', ranS, neededS: totalS });
  }
  const left = secondsLeft(hold.startedAt, totalS, context.input.now);
  if (left === null) return openBecause({ code: 'clock-jumped' });
  if (left === 0) return answeredAt(context.input.now);
  return {
    state: 'running',
    because: [{ code: 'hold-running', secondsLeft: left }],
    lastAt: null,
    timer: { kind: 'hold', startedAt: hold.startedAt, totalS, secondsLeft: left },
  };
}
