/** Whose turn it is at the key for who measured: the crew of the visit one after the other, and only with nobody else on it the whole firm. */
type Person = { readonly staffId: string };

export function nextToMeasure(before: string, crew: readonly Person[], people: readonly Person[]): string | null {
  const onSite = people.filter(({ staffId }) => crew.some((one) => one.staffId === staffId));
  const among = onSite.some(({ staffId }) => staffId !== before) ? onSite : people;
  return among[(among.findIndex(({ staffId }) => staffId === before) + 1) % among.length]?.staffId ?? null;
}
