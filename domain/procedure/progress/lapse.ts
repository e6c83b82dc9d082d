/** Answers that grow too old: tightness, room CO, the analyser's zero and pressures are asked again when a run is taken up again. */
import type { QuantityKey } from '../../quantity/quantities.ts';
import type { LapseKind, ModelSheet, StepItem } from '../modelSheet.ts';
import { secondsBetween } from './instants.ts';

const LAPSE_OF_QUANTITY: Readonly<Partial<Record<QuantityKey, LapseKind>>> = {
  tightnessPressureMbarG: 'tightness',
  tightnessDropMbar: 'tightness',
  tightnessMinutes: 'tightness',
  roomCoPpm: 'roomCo',
  freshAirO2VolPct: 'analyserZero',
  freshAirCo2VolPct: 'analyserZero',
  freshAirCoPpm: 'analyserZero',
  systemPressureBarG: 'pressure',
};

export type Lapse = { readonly lapse: LapseKind; readonly hours: number };

/** How long this item's answer holds; null: for good. */
export function lapseOf(item: StepItem, sheet: ModelSheet): Lapse | null {
  const lapse = item.lapses === undefined ? lapseOfQuantity(item) : item.lapses;
  return lapse === null ? null : { lapse, hours: sheet.lapseHours[lapse] };
}

/** What was answered after the run was taken up again is new, however long the run then lasts. */
export function hasLapsed(lapse: Lapse, lastAt: string, reopenedAt: string): boolean {
  return secondsBetween(lastAt, reopenedAt) > lapse.hours * 3600;
}

function lapseOfQuantity(item: StepItem): LapseKind | null {
  return item.kind === 'read' ? (LAPSE_OF_QUANTITY[item.quantity] ?? null) : null;
}
