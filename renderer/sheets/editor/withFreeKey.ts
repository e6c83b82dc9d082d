/** A new entry gets a name of its own where entries are known by name: a copy of a step must not pass for the step. */
import type { Json } from '../../../domain/procedure/sheetEdit.ts';

export function withFreeKey(entry: Json, body: Json): Json {
  const taken = new Set(keysIn(body));
  return renamed(entry, taken);
}

function renamed(value: Json, taken: Set<string>): Json {
  if (Array.isArray(value)) return value.map((one) => renamed(one, taken));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, inner]) => {
      if (name !== 'key' || typeof inner !== 'string') return [name, renamed(inner, taken)];
      const free = freeKey(inner, taken);
      taken.add(free);
      return [name, free];
    }),
  );
}

function freeKey(wanted: string, taken: ReadonlySet<string>): string {
  const stem = wanted === '' ? 'new' : wanted.replace(/-\d+$/, '');
  for (let count = 2; ; count += 1) {
    if (wanted === '' && count === 2 && !taken.has(stem)) return stem;
    const candidate = `${stem}-${count}`;
    if (!taken.has(candidate)) return candidate;
  }
}

function keysIn(value: Json): readonly string[] {
  if (Array.isArray(value)) return value.flatMap(keysIn);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) =>
    name === 'key' && typeof inner === 'string' ? [inner] : keysIn(inner),
  );
}
