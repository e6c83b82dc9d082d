/** Why a typed text is no reading yet, and what to type instead. */
import { formatNumber } from '../../../domain/quantity/formatQuantity.ts';
import type { TypedProblem } from '../../../domain/quantity/parseTyped.ts';
import { assertNever } from '../../../domain/result.ts';

export function problemWords(problem: TypedProblem): string {
  switch (problem.code) {
    case 'empty':
      return 'Nothing typed yet.';
    case 'not-a-number':
      return `“${problem.typedText.trim()}” is not a number.`;
    case 'unknown-unit':
      return `Unit “${problem.unitText}” is not known here. ${acceptedWords(problem.accepted)}`;
    case 'unit-of-another-kind':
      return problem.kinds.includes('absolute-pressure')
        ? `“${problem.unitText}” is absolute pressure. Type the gauge pressure: what the gauge shows above the air around it.`
        : `“${problem.unitText}” measures something else. ${acceptedWords(problem.accepted)}`;
    case 'ambiguous':
      return 'This can be read in more than one way. Which one is meant?';
    case 'beyond-possible':
      return beyondWords(problem);
    default:
      return assertNever(problem);
  }
}

type Beyond = Extract<TypedProblem, { code: 'beyond-possible' }>;

function beyondWords(problem: Beyond): string {
  const [min, max] = problem.possibleTyped;
  const unit = problem.unit === '' ? '' : ` ${problem.unit}`;
  const range = `Not possible: it lies between ${plain(min)} and ${plain(max)}${unit}.`;
  const others = problem.wouldFitIn.length > 0 ? ` Was it in ${problem.wouldFitIn.join(' or ')}?` : '';
  const point = problem.tenthWouldFit ? ' Is the decimal point missing?' : '';
  return range + others + point;
}

function acceptedWords(accepted: readonly string[]): string {
  const units = accepted.filter((unit) => unit !== '');
  return units.length === 0 ? 'It has no unit.' : `Type it in ${units.join(', ')}.`;
}

function plain(value: number): string {
  const rounded = Number(value.toPrecision(4));
  return formatNumber(rounded, /\.(\d+)$/.exec(String(rounded))?.[1]?.length ?? 0);
}
