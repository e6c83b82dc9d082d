/**
 * What a form must offer for a part of a sheet, read off the sheet's own schema: a field that is added there appears here
 * by itself, with the same limits.
 */
import { z } from 'zod';
import type { Json } from '../../../domain/procedure/sheetEdit.ts';

export type FormNode =
  | { readonly kind: 'text'; readonly maxLength: number | null }
  | { readonly kind: 'number' }
  | { readonly kind: 'flag' }
  | { readonly kind: 'choice'; readonly options: readonly string[] }
  /** Any of a closed list. */
  | { readonly kind: 'choices'; readonly options: readonly string[] }
  /** A list of words, one a line. */
  | { readonly kind: 'lines' }
  | { readonly kind: 'group'; readonly fields: readonly FormField[] }
  | { readonly kind: 'list'; readonly of: FormNode }
  /** One of several shapes, told apart by the value of one field. */
  | { readonly kind: 'variants'; readonly tag: string; readonly cases: readonly Variant[] }
  /** One of several shapes, told apart by which field is there. */
  | { readonly kind: 'either'; readonly cases: readonly FormField[] };

export type FormField = {
  readonly name: string;
  readonly node: FormNode;
  /** May be left away altogether. */
  readonly isOptional: boolean;
  /** May be said to be "none". */
  readonly isNullable: boolean;
  /** What holds when it is left away. */
  readonly fallback: Json | undefined;
};
export type Variant = { readonly value: string; readonly fields: readonly FormField[] };

/** A shape this form cannot show is a bug: it throws where the form is made, not where it is used. */
export function formFieldsOf(schema: z.ZodType): readonly FormField[] {
  const node = nodeOf(z.toJSONSchema(schema, { io: 'input', reused: 'inline' }));
  if (node.kind !== 'group') throw new Error('a form needs an object');
  return node.fields;
}

type JsonSchema = z.core.JSONSchema.BaseSchema;

function nodeOf(schema: JsonSchema): FormNode {
  const cases = schema.oneOf ?? schema.anyOf;
  if (cases !== undefined) return unionOf(cases.map(asSchema));
  if (schema.enum !== undefined) return { kind: 'choice', options: schema.enum.map(String) };
  if (schema.const !== undefined) return { kind: 'choice', options: [String(schema.const)] };
  switch (schema.type) {
    case 'string':
      return { kind: 'text', maxLength: schema.maxLength ?? null };
    case 'number':
    case 'integer':
      return { kind: 'number' };
    case 'boolean':
      return { kind: 'flag' };
    case 'array':
      return listOf(nodeOf(asSchema(schema.items)));
    case 'object':
      return { kind: 'group', fields: fieldsOf(schema) };
    default:
      throw new Error(`no form for ${JSON.stringify(schema).slice(0, 200)}`);
  }
}

function listOf(item: FormNode): FormNode {
  if (item.kind === 'choice') return { kind: 'choices', options: item.options };
  return item.kind === 'text' ? { kind: 'lines' } : { kind: 'list', of: item };
}

function fieldsOf(schema: JsonSchema): readonly FormField[] {
  const required = new Set(schema.required ?? []);
  return Object.entries(schema.properties ?? {}).map(([name, value]) => {
    const property = asSchema(value);
    const isNullable = property.anyOf?.some((one) => asSchema(one).type === 'null') ?? false;
    const inner = isNullable
      ? unwrapped((property.anyOf ?? []).map(asSchema).filter((one) => one.type !== 'null'))
      : nodeOf(property);
    return {
      name,
      node: inner,
      isOptional: !required.has(name),
      isNullable,
      fallback: property.default as Json | undefined,
    };
  });
}

function unwrapped(cases: readonly JsonSchema[]): FormNode {
  const [only, ...others] = cases;
  return only !== undefined && others.length === 0 ? nodeOf(only) : unionOf(cases);
}

function unionOf(cases: readonly JsonSchema[]): FormNode {
  const nodes = cases.map(nodeOf);
  const options = nodes.flatMap((node) => (node.kind === 'choice' ? node.options : []));
  if (nodes.every((node) => node.kind === 'choice')) return { kind: 'choice', options };
  const groups = nodes.map((node) => (node.kind === 'group' ? node.fields : []));
  const tag = groups[0]?.find(
    (field) => isTag(field) && groups.every((fields) => fields.some((one) => one.name === field.name && isTag(one))),
  );
  if (tag !== undefined) {
    return {
      kind: 'variants',
      tag: tag.name,
      cases: groups.map((fields) => ({
        value: optionOf(fields.find(({ name }) => name === tag.name)),
        fields: fields.filter(({ name }) => name !== tag.name),
      })),
    };
  }
  const alone = groups.flat();
  if (groups.every((fields) => fields.length === 1)) return { kind: 'either', cases: alone };
  throw new Error('no form for a union without a telling field');
}

function isTag(field: FormField): boolean {
  return field.node.kind === 'choice' && field.node.options.length === 1;
}

function optionOf(field: FormField | undefined): string {
  return field?.node.kind === 'choice' ? (field.node.options[0] ?? '') : '';
}

function asSchema(value: unknown): JsonSchema {
  return isSchema(value) ? value : {};
}

function isSchema(value: unknown): value is JsonSchema {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
