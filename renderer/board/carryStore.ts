/** What is being carried over the board, by mouse or by keys, outside React: only the ghost is drawn again while it moves. */
import { createSharedValue, type SharedValue } from '../kit/sharedValue.ts';

export type Carried = {
  readonly what:
    | { readonly kind: 'visit'; readonly visitId: string; readonly fromStaffId: string }
    | { readonly kind: 'job'; readonly jobId: string };
  readonly title: string;
  readonly durationMin: number;
  readonly staffId: string;
  readonly on: string;
  readonly startMin: number;
  readonly by: 'pointer' | 'keys';
};

export type CarryStore = SharedValue<Carried | null>;

export function createCarryStore(): CarryStore {
  return createSharedValue<Carried | null>(null, isSame);
}

/** A pointer moves by pixels, a carried visit by quarters of an hour. */
function isSame(a: Carried | null, b: Carried | null): boolean {
  if (a === null || b === null) return a === b;
  return a.what === b.what && a.staffId === b.staffId && a.on === b.on && a.startMin === b.startMin;
}
