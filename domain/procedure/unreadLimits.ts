/**
 * Limits that nothing is ever held against: no step of the sheet reads that quantity at that point. Such a sheet is sound and
 * may be published, but whoever wrote the limit believes it guards something.
 */
import { type QuantityKey, quantitySpec } from '../quantity/quantities.ts';
import type { SheetProblem } from './crossCheckSheet.ts';
import type { ModelSheet, StepItem } from './modelSheet.ts';
import { stagePoint } from './stagePoint.ts';

/** Worked out wherever what they come from is read, and typed nowhere. */
const DERIVED: ReadonlySet<QuantityKey> = new Set<QuantityKey>(['coAirFreePpm', 'coCo2Ratio', 'deltaTK']);

export function unreadLimits(sheet: ModelSheet): readonly SheetProblem[] {
  const places = [...sheet.startup, ...sheet.service, ...(sheet.repair ?? [])]
    .flatMap(({ items }) => items)
    .flatMap(placesRead);
  const pointsRead = new Set(places.map(({ point }) => point));
  const quantitiesRead = new Set(places.map(({ quantity }) => quantity));
  const isRead = (quantity: QuantityKey, point: string) =>
    places.some((one) => one.quantity === quantity && one.point === point);
  const words = (point: string) => sheet.firingPoints.find(({ key }) => key === point)?.label ?? point;
  return sheet.limits.flatMap(({ quantity, point }, index) => {
    const path = `limits.${index}.${point === null ? 'quantity' : 'point'}`;
    const { label } = quantitySpec(quantity);
    const isDerived = DERIVED.has(quantity);
    if (point === null)
      return isDerived || quantitiesRead.has(quantity)
        ? []
        : [{ path, message: `no step of this sheet reads ${label}: the limit is never used` }];
    if (!pointsRead.has(point))
      return [{ path, message: `no step of this sheet reads anything at “${words(point)}”: the limit is never used` }];
    return isDerived || isRead(quantity, point)
      ? []
      : [{ path, message: `no step of this sheet reads ${label} at “${words(point)}”: the limit is never used` }];
  });
}

type Place = { readonly quantity: QuantityKey; readonly point: string | null };

function placesRead(item: StepItem): readonly Place[] {
  switch (item.kind) {
    case 'read':
      return [{ quantity: item.quantity, point: item.point }];
    case 'series':
      return [...item.quantities, ...item.optional].map((quantity) => ({ quantity, point: item.firingPoint }));
    case 'tuning':
      return item.stages.flatMap(({ key }) =>
        (item.stageReadings ?? []).map(({ quantity }) => ({ quantity, point: stagePoint(key) })),
      );
    default:
      return [];
  }
}
