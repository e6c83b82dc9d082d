/** Everything that is asked about the dates of one appliance: their order, and which of them is which. */
import type { KnownDate } from '../../coverage/knownDate.ts';
import type { SheetCover } from '../../procedure/modelSheet.ts';
import { type DateKindsProblem, dateKindsConfused } from './dateKindsConfused.ts';
import { type DateProblem, dateOrderProblems } from './dateOrderProblems.ts';

export type DateQuestion = DateProblem | DateKindsProblem;

export function dateQuestions(input: {
  readonly cover: SheetCover | null;
  readonly dates: readonly KnownDate[];
  /** null: not handed in yet. */
  readonly registeredOn: string | null;
  readonly isNewBuild: boolean;
  readonly today: string;
}): readonly DateQuestion[] {
  const { dates, registeredOn, today } = input;
  const registered = registeredOn === null ? [] : [{ kind: 'registered', on: registeredOn, precision: 'day' as const }];
  return [...dateOrderProblems([...dates, ...registered], today), ...dateKindsConfused(input)];
}
