/** The value a new part of a sheet begins with: structure, and nothing that somebody has yet to say. Missing is not zero. */
import type { Json } from '../../../domain/procedure/sheetEdit.ts';
import type { FormField, FormNode } from './formNode.ts';

/** `undefined`: left away until it is typed. */
export function blankValue(node: FormNode): Json | undefined {
  switch (node.kind) {
    case 'text':
      return '';
    case 'number':
    case 'choice':
      return undefined;
    case 'flag':
      return false;
    case 'choices':
    case 'lines':
    case 'list':
      return [];
    case 'group':
      return blankFields(node.fields);
    case 'variants': {
      const [first] = node.cases;
      return first === undefined ? undefined : { [node.tag]: first.value, ...blankFields(first.fields) };
    }
    case 'either':
      return {};
  }
}

export function blankFields(fields: readonly FormField[]): Record<string, Json> {
  const entries = fields.flatMap(({ name, node, isOptional, isNullable, fallback }): [string, Json][] => {
    if (fallback !== undefined) return [[name, fallback]];
    if (isOptional) return [];
    if (isNullable) return [[name, null]];
    const blank = blankValue(node);
    return blank === undefined ? [] : [[name, blank]];
  });
  return Object.fromEntries(entries);
}

/** The same thing as another kind: what both kinds have stays, what only the new one has begins blank. */
export function asVariant(
  value: Json,
  tag: string,
  to: { readonly value: string; readonly fields: readonly FormField[] },
): Json {
  const before = typeof value === 'object' && value !== null && !Array.isArray(value) ? value : {};
  const kept = Object.entries(before).filter(([name]) => to.fields.some((field) => field.name === name));
  return { ...blankFields(to.fields), ...Object.fromEntries(kept), [tag]: to.value };
}
