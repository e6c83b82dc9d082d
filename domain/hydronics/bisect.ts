/**
 * Where a rising quantity passes its target, for formulas without a closed inverse.
 *
 * Formula  halving of the interval until no number lies between its ends
 * Valid    `isBelow` true from `low` up to one point and false from there to `high`
 * Source   definition
 * Checked  tests/domain/hydronics/bisect.test.ts
 */
export function bisect(search: {
  readonly low: number;
  readonly high: number;
  readonly isBelow: (value: number) => boolean;
}): number {
  let { low, high } = search;
  let middle = (low + high) / 2;
  while (low < middle && middle < high) {
    if (search.isBelow(middle)) low = middle;
    else high = middle;
    middle = (low + high) / 2;
  }
  return middle;
}
