/** What a refused text may have meant, for the hand to pick: its readings if it has several, its other units if it fits those. */
import type { TypedProblem } from '../../../domain/quantity/parseTyped.ts';
import type { PickedMeaning } from './meaningText.ts';

/** As many as the keys Alt+1 to Alt+4. */
const MOST = 4;

/** A missing decimal point is asked about in words only: it would be another number than the one that was read. */
export function meaningsOf(problem: TypedProblem | null): readonly PickedMeaning[] {
  switch (problem?.code) {
    case 'ambiguous':
      return problem.meanings.slice(0, MOST);
    case 'beyond-possible':
      return problem.wouldFitIn.slice(0, MOST).map((unit) => ({ valueTyped: problem.valueTyped, unit }));
    default:
      return [];
  }
}
