/** What it takes to believe that an appliance was converted to another fuel, and which question of a sheet asks for it. */
import type { FuelKey, SheetStep } from './modelSheet.ts';
import { isFuelKey } from './progress/isFuelKey.ts';
import type { RecordByItem } from './progress/recordByItem.ts';

/** The answer of a choose item that says the appliance was converted: what hangs on it is the proof. */
export const CONVERTED = 'converted';

/** How the appliance was set up, as it was last recorded by the day asked about. */
export type FuelSetUp = {
  readonly fuel: FuelKey;
  readonly conversionKit: string | null;
  readonly orifice: string | null;
  readonly photoCount: number;
};

/**
 * A conversion counts for the fuel burnt here only when kit, orifice and a photo are on record: word alone lights no burner of
 * another fuel. Common practice: clocked input, orifice marking and photo are what prove a conversion.
 */
export function isConvertedTo(fuel: FuelKey, setUp: FuelSetUp | null): boolean {
  if (setUp === null || setUp.fuel !== fuel) return false;
  return isWritten(setUp.conversionKit) && isWritten(setUp.orifice) && setUp.photoCount > 0;
}

function isWritten(text: string | null): boolean {
  return (text ?? '').trim() !== '';
}

/** The fuel of the data plate: as read on this run, or else as known of the appliance; null: nobody knows. */
export function plateFuelOf(steps: readonly SheetStep[], byItem: RecordByItem): FuelKey | null {
  const plateItem = steps
    .flatMap((step) => step.items)
    .find((item) => item.kind === 'choose' && item.identifies === 'plate-fuel');
  const seen = plateItem === undefined ? null : (byItem.answer(plateItem.key)?.value ?? null);
  return seen !== null && isFuelKey(seen) ? seen : byItem.record.appliance.plateFuel;
}

/** Does the site burn another fuel than the plate is for? Then it is a conversion, whatever anybody answers. */
export function isOtherFuelThanPlate(steps: readonly SheetStep[], byItem: RecordByItem): boolean {
  const plateFuel = plateFuelOf(steps, byItem);
  return plateFuel !== null && plateFuel !== byItem.record.fuel;
}
