/** All thirty-five rows. */
import { DATA_MISTAKES } from './dataMistakes.ts';
import { FLUE_MISTAKES } from './flueMistakes.ts';
import type { InjectedMistake } from './injectedMistake.ts';
import { ORDER_MISTAKES } from './orderMistakes.ts';
import { UNIT_MISTAKES } from './unitMistakes.ts';

export const MISTAKES: readonly InjectedMistake[] = [
  ...FLUE_MISTAKES,
  ...UNIT_MISTAKES,
  ...ORDER_MISTAKES,
  ...DATA_MISTAKES,
].toSorted((one, other) => one.row - other.row);
