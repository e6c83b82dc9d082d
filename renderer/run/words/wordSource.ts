/** Where the words of a run's items, steps and firing points are looked up. */
import type { ModelSheet, SheetStep } from '../../../domain/procedure/modelSheet.ts';
import { pointWords } from './pointWords.ts';
import type { WordSource } from './reasonWords.ts';

export function wordSource(sheet: Pick<ModelSheet, 'firingPoints'>, steps: readonly SheetStep[]): WordSource {
  return { steps, firingPointLabel: (key) => pointWords(key, sheet).toLowerCase() };
}
