/** The rows of what was found, in the order it was found in; an id without a row is left out. */
export function inOrderOf<Row>(
  ids: readonly string[],
  rows: readonly Row[],
  idOf: (row: Row) => string,
): readonly Row[] {
  const byId = new Map(rows.map((row) => [idOf(row), row]));
  return ids.flatMap((id) => byId.get(id) ?? []);
}
