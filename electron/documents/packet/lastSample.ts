/** The reading that stands for a firing point: the last sample that was taken there. */
import type { OpenReading, PacketView } from './packetView.ts';

export function lastSample(view: PacketView, quantity: string, point: string): OpenReading | undefined {
  return view.current
    .filter((one) => one.quantity === quantity && one.point === point && one.valueOwn !== null)
    .toSorted((a, b) => a.measuredAt.localeCompare(b.measuredAt) || Number(a.sample) - Number(b.sample))
    .at(-1);
}
