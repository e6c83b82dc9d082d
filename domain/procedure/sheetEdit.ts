/**
 * One change of a sheet that is being written. It works on plain JSON, because a sheet in the making need not be a valid
 * one: what is typed is kept as typed, and the checks say what is wrong with it.
 */
import { z } from 'zod';
import { err, ok, type Result } from '../result.ts';

const path = z.array(z.union([z.string().max(100), z.number().int().min(0).max(100_000)])).max(20);
const at = z.number().int().min(0).max(100_000);
/** A number or text typed, one choice, or a part of a sheet put in whole. */
const json = z.json();

export const sheetEdit = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('set'), path: path.min(1), value: json }),
  z.strictObject({ kind: z.literal('unset'), path: path.min(1) }),
  z.strictObject({ kind: z.literal('insert'), path, at, value: json }),
  z.strictObject({ kind: z.literal('remove'), path, at }),
  z.strictObject({ kind: z.literal('move'), path, at, to: at }),
]);
export type SheetEdit = z.infer<typeof sheetEdit>;
export type SheetPath = SheetEdit['path'];
export type Json = z.infer<typeof json>;

/** Leaves what it is given as it is. */
export function applySheetEdit(body: Json, edit: SheetEdit): Result<Json, 'no-such-place'> {
  switch (edit.kind) {
    case 'set':
    case 'unset':
      return within(body, edit.path.slice(0, -1), (parent) => setKey(parent, edit.path.at(-1), edit));
    case 'insert':
      return within(body, edit.path, (list) =>
        Array.isArray(list) && edit.at <= list.length ? ok(list.toSpliced(edit.at, 0, edit.value)) : NO_SUCH_PLACE,
      );
    case 'remove':
      return within(body, edit.path, (list) =>
        Array.isArray(list) && edit.at < list.length ? ok(list.toSpliced(edit.at, 1)) : NO_SUCH_PLACE,
      );
    case 'move':
      return within(body, edit.path, (list) => moveIn(list, edit.at, edit.to));
  }
}

const NO_SUCH_PLACE = err('no-such-place' as const);
type Change = (value: Json) => Result<Json, 'no-such-place'>;

function within(body: Json, [first, ...rest]: SheetPath, change: Change): Result<Json, 'no-such-place'> {
  if (first === undefined) return change(body);
  const child = childOf(body, first);
  if (child === undefined) return NO_SUCH_PLACE;
  const changed = within(child, rest, change);
  if (!changed.ok) return changed;
  return ok(
    Array.isArray(body) ? body.with(Number(first), changed.value) : { ...asObject(body), [first]: changed.value },
  );
}

function childOf(value: Json, key: string | number): Json | undefined {
  if (Array.isArray(value)) return typeof key === 'number' ? value[key] : undefined;
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
  return value[key];
}

function setKey(
  parent: Json,
  key: string | number | undefined,
  edit: { readonly kind: 'set'; readonly value: Json } | { readonly kind: 'unset' },
): Result<Json, 'no-such-place'> {
  if (Array.isArray(parent)) {
    return edit.kind === 'set' && typeof key === 'number' && key < parent.length
      ? ok(parent.with(key, edit.value))
      : NO_SUCH_PLACE;
  }
  if (typeof parent !== 'object' || parent === null || typeof key !== 'string' || key === '__proto__')
    return NO_SUCH_PLACE;
  if (edit.kind === 'set') return ok({ ...parent, [key]: edit.value });
  const { [key]: _gone, ...kept } = parent;
  return ok(kept);
}

function moveIn(list: Json, from: number, to: number): Result<Json, 'no-such-place'> {
  if (!Array.isArray(list)) return NO_SUCH_PLACE;
  const moved = list[from];
  if (moved === undefined || to >= list.length) return NO_SUCH_PLACE;
  return ok(list.toSpliced(from, 1).toSpliced(to, 0, moved));
}

function asObject(value: Json): Readonly<Record<string, Json>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? value : {};
}
