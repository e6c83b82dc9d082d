/** Where a registration stands against its last day, and which of the two lengths of a term the record supports. */
import type { CoverFacts } from './coverFacts.ts';
import { type RegistrationDue, registrationDue } from './registrationDeadline.ts';

export type RegistrationStanding = {
  readonly kind:
    | 'confirmed'
    /** Handed in, in time or with no last day known. */
    | 'submitted'
    /** Handed in after the last day: the maker may still take it. */
    | 'submitted-late'
    | 'open'
    | 'missed'
    | 'no-date';
  readonly due: RegistrationDue | null;
  /** The registered length is counted; an open registration can still earn it. */
  readonly countsAsRegistered: boolean;
};

export function registrationStanding(
  facts: Pick<CoverFacts, 'cover' | 'dates' | 'registration' | 'today'>,
): RegistrationStanding {
  const due = registrationDue(facts);
  const kind = kindOf(facts, due?.dueOn ?? null);
  return { kind, due, countsAsRegistered: kind === 'confirmed' || kind === 'submitted' || kind === 'open' };
}

function kindOf(
  { registration, today }: Pick<CoverFacts, 'registration' | 'today'>,
  dueOn: string | null,
): RegistrationStanding['kind'] {
  if (registration.confirmedOn !== null) return 'confirmed';
  if (registration.submittedOn !== null)
    return dueOn !== null && registration.submittedOn > dueOn ? 'submitted-late' : 'submitted';
  if (dueOn === null) return 'no-date';
  return today <= dueOn ? 'open' : 'missed';
}
