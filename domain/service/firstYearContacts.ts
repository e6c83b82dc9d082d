/** The two contacts of a boiler's first year: a call after two to four weeks, a look-in after six to twelve months. Common practice, no source. */
import { addDays, addMonths } from '../coverage/period.ts';

export type FirstYearContact = {
  readonly kind: 'first-call' | 'look-in';
  readonly windowFrom: string;
  readonly latestOn: string;
  /** Afterwards nobody needs to be reminded of it. */
  readonly goneOn: string;
};

/** Counted from the startup; what was done is left out. */
export function firstYearContacts(input: {
  readonly startedOn: string;
  /** Contacts recorded as made or not wanted. */
  readonly closed: readonly FirstYearContact['kind'][];
  /** Days of finished visits, of any kind: one in the look-in's window is the look-in. */
  readonly visitsOn: readonly string[];
}): readonly FirstYearContact[] {
  const call: FirstYearContact = {
    kind: 'first-call',
    windowFrom: addDays(input.startedOn, 14),
    latestOn: addDays(input.startedOn, 28),
    goneOn: addMonths(input.startedOn, 3),
  };
  const lookIn: FirstYearContact = {
    kind: 'look-in',
    windowFrom: addMonths(input.startedOn, 6),
    latestOn: addMonths(input.startedOn, 12),
    goneOn: addMonths(input.startedOn, 13),
  };
  return [call, lookIn].filter(
    ({ kind, windowFrom }) =>
      !input.closed.includes(kind) && !(kind === 'look-in' && input.visitsOn.some((on) => on >= windowFrom)),
  );
}
