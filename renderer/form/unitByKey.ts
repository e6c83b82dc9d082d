/** Alt and an arrow take the next unit of the list, or the one before, around its ends. null: another key. */

type Key = { readonly altKey: boolean; readonly key: string };

export function unitByKey({ altKey, key }: Key, units: readonly string[], unit: string): string | null {
  const step = key === 'ArrowDown' ? 1 : key === 'ArrowUp' ? -1 : 0;
  if (!altKey || step === 0 || units.length < 2) return null;
  return units[(units.indexOf(unit) + step + units.length) % units.length] ?? null;
}
