/**
 * Inputs as an operation's own schema wants them: every field well shaped, every id one that some row of the store has (of
 * the right kind as often as not), or of nobody. So a random input passes the door and reaches the handler.
 */
import fc from 'fast-check';
import { z } from 'zod';
import { id as idSchema } from '../../electron/contract/operation.ts';

/** Ids by the table they stand in. */
export type KnownIds = ReadonlyMap<string, readonly string[]>;

/** Shaped like an id, and of nobody: a row that went meanwhile, or one of another firm. */
export const STALE_ID = '018f0000-0000-7000-8000-000000000000';

type Schema = z.core.$ZodType;

export function inputArbitrary(schema: Schema, known: KnownIds): fc.Arbitrary<unknown> {
  return arbitraryOf(schema, '', known);
}

function arbitraryOf(schema: Schema, field: string, known: KnownIds): fc.Arbitrary<unknown> {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  const inside = (inner: Schema): fc.Arbitrary<unknown> => arbitraryOf(inner, field, known);
  switch (def.type) {
    case 'string':
      return schema === (idSchema as Schema) ? idArbitrary(field, known) : stringArbitrary(schema, field, known);
    case 'number':
      return numberArbitrary(schema);
    case 'boolean':
      return fc.boolean();
    case 'literal':
      return fc.constantFrom(...def.values);
    case 'enum':
      return fc.constantFrom(...Object.values(def.entries));
    case 'null':
      return fc.constant(null);
    case 'unknown':
    case 'any':
    case 'custom':
      return fc.constantFrom({}, { kind: 'nothing' });
    case 'nullable':
      return fc.option(inside(def.innerType), { nil: null, freq: 3 });
    case 'optional':
    case 'default':
    case 'prefault':
      return fc.option(inside(def.innerType), { nil: undefined, freq: 2 });
    case 'readonly':
    case 'nonoptional':
      return inside(def.innerType);
    case 'pipe':
      return inside(def.in);
    case 'lazy':
      // A value that may hold itself: any JSON.
      return fc.constantFrom(null, 1, 'text', [], {});
    case 'array':
      return fc.array(inside(def.element), {
        minLength: minLengthOf(schema),
        maxLength: Math.max(3, minLengthOf(schema)),
      });
    case 'tuple':
      return fc.tuple(...def.items.map(inside));
    case 'record':
      return fc.dictionary(inside(def.keyType) as fc.Arbitrary<string>, inside(def.valueType), { maxKeys: 2 });
    case 'union':
      return fc.oneof(...def.options.map(inside));
    case 'object':
      return fc.record(
        Object.fromEntries(
          Object.entries(def.shape).map(([key, value]) => [key, arbitraryOf(value, key, known)] as const),
        ),
      );
    default:
      throw new Error(`no arbitrary for a field of type ${def.type}: add it here`);
  }
}

/** `applianceId` wants a row of `appliances`; whatever it wants, an id of another table is as well shaped. */
function idArbitrary(field: string, known: KnownIds): fc.Arbitrary<string> {
  const every = [...known.values()].flat();
  const own = [...known].flatMap(([table, ids]) => (isNamedAfter(field, table) ? ids : []));
  return fc.oneof(
    { weight: 4, arbitrary: fc.constantFrom(...(own.length === 0 ? every : own)) },
    { weight: 1, arbitrary: fc.constantFrom(...every) },
    { weight: 1, arbitrary: fc.constant(STALE_ID) },
  );
}

/** Fields that name a row otherwise than by its table. */
const OTHER_NAMES: Readonly<Record<string, string>> = {
  byId: 'staff',
  keptById: 'staff',
  measuredById: 'staff',
  attachmentId: 'attachments',
  after: 'appliances',
};

function isNamedAfter(field: string, table: string): boolean {
  if (OTHER_NAMES[field] !== undefined) return OTHER_NAMES[field] === table;
  const word = field.replace(/Ids?$/u, '').replaceAll(/[A-Z]/gu, (letter) => `_${letter.toLowerCase()}`);
  const singular = table.replace(/ies$/u, 'y').replace(/s$/u, '');
  return word !== '' && (singular === word || table === word || singular.endsWith(`_${word}`));
}

/** By what the schema takes: tried out, because formats and patterns cannot be turned around. */
function stringArbitrary(schema: Schema, field: string, known: KnownIds): fc.Arbitrary<string> {
  const candidates = [
    ...['2026-03-02', '2019-02-28', '2040-12-31'],
    '2026-03-02T13:00:00.000Z',
    ...['08:30', '23:59'],
    ...['4711', '0000'],
    'nobody@example.org',
    'America/Halifax',
    ...['CA', 'USD', '2026-03', '/visit/labourMin', '/run/readings/0/valueOwn'],
    'general-practice-natural-gas',
    ...['arrival', 'room-co', 'gas-smell', 'serial', 'gas-on', 'first-fire', 'yes', 'none', 'high'],
    ...['12', '9,2', '>4000', 'ppm', '%', 'mbar'],
    ...['a word or two', 'é≥₂ …', '-', ''],
    'a'.repeat(64),
    ...[...known.values()].flat().slice(0, 5),
  ].filter((text) => z.safeParse(schema, text).success);
  if (candidates.length === 0) throw new Error(`no text for “${field}”: add one here`);
  return fc.constantFrom(...candidates);
}

function numberArbitrary(schema: Schema): fc.Arbitrary<number> {
  const candidates = [0, 1, 2, 3, 7, 50, 120, 480, 1000, 0.5, -1, 44.65, -63.57, 2026, 1e9].filter(
    (value) => z.safeParse(schema, value).success,
  );
  if (candidates.length === 0) throw new Error('no number for a field: add one here');
  return fc.constantFrom(...candidates);
}

function minLengthOf(schema: Schema): number {
  return ((schema as z.core.$ZodArray)._zod.bag['minimum'] as number) ?? 0;
}
