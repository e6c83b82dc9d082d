/** How a number stands to an earlier one, in a word or two. */
import type { Comparison } from '../../../domain/trend/compareVisits.ts';

export function movementWords(comparison: Comparison | null): string {
  if (comparison === null) return '';
  const { movement, obstacles, caveats } = comparison;
  if (movement === null) return OBSTACLE_WORDS[obstacles[0] ?? 'other-firing-point'];
  const but = caveats.map((one) => CAVEAT_WORDS[one]).join(', ');
  return but === '' ? MOVEMENT_WORDS[movement] : `${MOVEMENT_WORDS[movement]} (${but})`;
}

const MOVEMENT_WORDS: Record<NonNullable<Comparison['movement']>, string> = {
  up: '▲ higher',
  down: '▼ lower',
  same: '= as before',
  unclear: '? can’t tell',
};

const OBSTACLE_WORDS: Record<Comparison['obstacles'][number], string> = {
  'other-firing-point': 'other firing point',
  'other-call': 'other call',
  'other-return-temperature': 'other return',
  'return-not-read': 'return not read',
};

const CAVEAT_WORDS: Record<Comparison['caveats'][number], string> = {
  'other-instrument': 'other instrument',
  'other-return-temperature': 'other return',
};
