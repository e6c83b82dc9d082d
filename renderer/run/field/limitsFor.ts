/** What the sheet wants of a quantity at a point with this fuel. Empty: the sheet is silent, and nothing is made up. */
import type { FuelKey, ModelSheet, SheetLimit } from '../../../domain/procedure/modelSheet.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';

export function limitsFor(
  sheet: Pick<ModelSheet, 'limits'>,
  fuel: FuelKey,
  quantity: QuantityKey,
  point: string | null,
): readonly SheetLimit[] {
  return sheet.limits.filter(
    (limit) =>
      limit.quantity === quantity &&
      (limit.point === null || limit.point === point) &&
      (limit.fuel === null || limit.fuel === fuel),
  );
}
