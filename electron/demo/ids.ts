/** Ids of what was made, by the scenario's own keys. */
export type Ids = Map<string, string>;

export function idOf(ids: Ids, key: string): string {
  const found = ids.get(key);
  if (found === undefined) throw new Error(`the scenario names "${key}" but does not have it`);
  return found;
}
