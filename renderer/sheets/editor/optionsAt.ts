/** Names that point elsewhere in the same sheet: earlier steps, firing points, earlier questions and their answers. */
import type { Json, SheetPath } from '../../../domain/procedure/sheetEdit.ts';
import type { Option } from '../../form/SelectField.tsx';
import { valueAt } from './checkDraft.ts';

/** `null`: the place takes free words. */
export function optionsAt(path: SheetPath, body: Json): readonly Option[] | null {
  const name = path.at(-1);
  const [list, stepIndex] = path;
  if (name === 'after' && typeof stepIndex === 'number') return named(stepsOf(body, list).slice(0, stepIndex), 'title');
  if (name === 'firingPoint') return named(asList(valueAt(body, ['firingPoints'])), 'label');
  if (name === 'item' && path.at(-2) === 'answer') return named(earlierQuestions(path, body), 'label');
  if (name === 'foundOutside') return named(earlierReadings(path, body), 'label');
  if (name === 'is' && path.at(-2) === 'answer') {
    const asked = valueAt(body, [...path.slice(0, -1), 'item']);
    return answersOf(earlierQuestions(path, body).find((item) => valueAt(item, ['key']) === asked));
  }
  return null;
}

function earlierQuestions(path: SheetPath, body: Json): readonly Json[] {
  return earlierItems(path, body).filter((item) => ['confirm', 'choose'].includes(String(valueAt(item, ['kind']))));
}

function earlierReadings(path: SheetPath, body: Json): readonly Json[] {
  return earlierItems(path, body).filter((item) => valueAt(item, ['kind']) === 'read');
}

function earlierItems([list, stepIndex, , itemIndex]: SheetPath, body: Json): readonly Json[] {
  const steps = stepsOf(body, list).slice(0, Number(stepIndex) + 1);
  return steps.flatMap((step, index) => {
    const all = asList(valueAt(step, ['items']));
    return index === Number(stepIndex) ? all.slice(0, Number(itemIndex)) : all;
  });
}

function answersOf(item: Json | undefined): readonly Option[] {
  if (valueAt(item, ['kind']) === 'choose') return named(asList(valueAt(item, ['options'])), 'label', 'value');
  return item === undefined
    ? []
    : [
        { value: 'yes', label: 'yes' },
        { value: 'no', label: 'no' },
        { value: 'not-applicable', label: 'not applicable' },
      ];
}

function stepsOf(body: Json, list: string | number | undefined): readonly Json[] {
  return asList(valueAt(body, [list ?? '']));
}

function named(list: readonly Json[], label: string, key = 'key'): readonly Option[] {
  return list.flatMap((one) => {
    const value = valueAt(one, [key]);
    const words = valueAt(one, [label]);
    return typeof value === 'string' && value !== ''
      ? [{ value, label: typeof words === 'string' && words !== '' ? words : value }]
      : [];
  });
}

export function asList(value: Json | undefined): readonly Json[] {
  return Array.isArray(value) ? value : [];
}
