/**
 * Installed, started up, moved in: the registration window runs from one of them, and taking another moves the last
 * day by weeks. Shown with all labelled dates and the rule, and asked where the sheet's own date is missing.
 */
import type { KnownDate } from '../../coverage/knownDate.ts';
import { registrationDeadline } from '../../coverage/registrationDeadline.ts';
import { COVER_DATES, type CoverDate, type SheetCover } from '../../procedure/modelSheet.ts';

export type DateKindsProblem = {
  readonly code: 'date-kinds-confused';
  /** The dates to ask for, or to look at again. */
  readonly kinds: readonly CoverDate[];
  readonly why: 'rule-date-missing' | 'started-before-installed' | 'lived-in-before-installed';
  /** The last day to register by each known date, the earliest first. */
  readonly lastDays: readonly { readonly kind: CoverDate; readonly dueOn: string }[];
};

export function dateKindsConfused(input: {
  readonly cover: SheetCover | null;
  readonly dates: readonly KnownDate[];
  /** In a new house nobody lives before the boiler is in; a boiler that is changed finds people there. */
  readonly isNewBuild: boolean;
  readonly today: string;
}): readonly DateKindsProblem[] {
  const { cover, dates } = input;
  const lastDays = COVER_DATES.flatMap((kind) => {
    const date = dates.find((one) => one.kind === kind);
    const deadline = date && registrationDeadline({ cover, dates: [date], today: input.today });
    return deadline ? [{ kind, dueOn: deadline.dueOn }] : [];
  }).toSorted((one, other) => (one.dueOn < other.dueOn ? -1 : one.dueOn > other.dueOn ? 1 : 0));
  const dayOf = (kind: CoverDate) => dates.find((one) => one.kind === kind && one.precision === 'day')?.on;
  const [installed, started, occupied] = [dayOf('installed'), dayOf('started'), dayOf('occupied')];
  const problems: DateKindsProblem[] = [];
  const rule = cover?.registration.countedFrom;
  if (rule !== undefined && rule !== 'earliest' && !dates.some((one) => one.kind === rule) && lastDays.length > 0) {
    problems.push({ code: 'date-kinds-confused', why: 'rule-date-missing', kinds: [rule], lastDays });
  }
  if (installed !== undefined && started !== undefined && started < installed) {
    const kinds = ['installed', 'started'] as const;
    problems.push({ code: 'date-kinds-confused', why: 'started-before-installed', kinds, lastDays });
  }
  if (input.isNewBuild && installed !== undefined && occupied !== undefined && occupied < installed) {
    const kinds = ['installed', 'occupied'] as const;
    problems.push({ code: 'date-kinds-confused', why: 'lived-in-before-installed', kinds, lastDays });
  }
  return problems;
}
