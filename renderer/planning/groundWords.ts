/** Which goal speaks for the place a visit was given. */
import type { PlacementGround } from '../../domain/schedule/explainPlacement.ts';

export const GROUND_WORDS: Record<PlacementGround, string> = {
  recorded: 'already begun or done',
  pinned: 'pinned',
  'days-in-a-row': 'longer than a day: the first days in a row that one person has for it',
  'only-possible-day': 'the only day and person that would do',
  deadline: 'in time for its latest day',
  'least-late': 'past its latest day, as soon after it as can be',
  'due-window': 'as near as can be to the days it is due',
  promise: 'as the customer was told',
  qualified: 'has the course or instruments in date that others lack',
  'least-travel': 'least travel',
  'best-for-the-whole': 'another day would suit this one better, but not all of them together',
};
