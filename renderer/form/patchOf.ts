/** A change of one field. TypeScript cannot follow a computed key through a generic, so the promise is made here, once. */
import type { FieldOf } from './fieldKeys.ts';

export function patchOf<V extends object, T>(name: FieldOf<V, T>, value: T): Partial<V> {
  return { [name]: value } as Partial<V>;
}
