/** One line for an entry of a list that is folded up: a limit, a step, an item, a term of cover. */
import type { Json } from '../../../domain/procedure/sheetEdit.ts';
import type { UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import { isQuantityKey, quantitySpec } from '../../../domain/quantity/quantities.ts';
import { limitText } from '../limitText.ts';
import { valueAt } from './checkDraft.ts';
import { optionWords } from './fieldWords.ts';
import { asList } from './optionsAt.ts';

export function entryWords(entry: Json, position: number, unitSystem: UnitSystem): string {
  const quantity = textAt(entry, 'quantity');
  if (isQuantityKey(quantity) && textAt(entry, 'kind') === '') return quantityWords(entry, quantity, unitSystem);
  const named = textAt(entry, 'title') || textAt(entry, 'label') || firstWords(entry);
  const kind = textAt(entry, 'kind');
  const count = asList(valueAt(entry, ['items'])).length;
  return [
    named === '' ? `Entry ${position}` : named,
    kind === '' ? '' : `(${optionWords(kind)})`,
    count === 0 ? '' : `– ${count === 1 ? 'one item' : `${count} items`}`,
  ]
    .filter((part) => part !== '')
    .join(' ');
}

function quantityWords(entry: Json, quantity: Parameters<typeof quantitySpec>[0], unitSystem: UnitSystem): string {
  const number = (name: string) => {
    const value = valueAt(entry, [name]);
    return typeof value === 'number' ? value : undefined;
  };
  const [min, max] = [number('min'), number('max')];
  const range =
    min === undefined && max === undefined
      ? ''
      : limitText(
          { quantity, ...(min === undefined ? {} : { min }), ...(max === undefined ? {} : { max }) },
          unitSystem,
        );
  const difference =
    textAt(entry, 'at') === '' ? '' : `${spaced(textAt(entry, 'at'))} less ${spaced(textAt(entry, 'to'))}`;
  return [
    quantitySpec(quantity).label,
    difference,
    spaced(textAt(entry, 'point')),
    textAt(entry, 'fuel') === '' ? '' : optionWords(textAt(entry, 'fuel')),
    range,
    textAt(entry, 'severity') === 'stop' ? 'stop' : '',
  ]
    .filter((part) => part !== '')
    .join(', ');
}

/** A fuel, an emitter, a part of the cover: the first word in it. */
function firstWords(entry: Json): string {
  if (typeof entry !== 'object' || entry === null || Array.isArray(entry)) return '';
  const first = Object.values(entry).find((value) => typeof value === 'string' && value !== '');
  return typeof first === 'string' ? optionWords(first) : '';
}

function textAt(entry: Json, name: string): string {
  const value = valueAt(entry, [name]);
  return typeof value === 'string' ? value : '';
}

function spaced(key: string): string {
  return key.replaceAll('-', ' ');
}
