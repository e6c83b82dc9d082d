/** How far a reading can be off by its instrument's class: the larger of the two counts. Zero: nobody said. */
export function plusMinusOfInstrument(
  value: number,
  accuracy: { readonly abs: number; readonly relPct: number } | undefined,
): number {
  if (accuracy === undefined) return 0;
  const spread = Math.max(accuracy.abs, (Math.abs(value) * accuracy.relPct) / 100);
  return Number.isFinite(spread) ? Math.abs(spread) : 0;
}
