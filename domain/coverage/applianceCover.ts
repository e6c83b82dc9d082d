/**
 * The maker's stated terms for one appliance, part by part, and how far the record shows that their conditions were kept.
 * States in words of our own: what a maker grants is the maker's to say.
 *
 * State of a term: past its date when today is after its last day; else not evidenced when a condition's day is over
 * without evidence or a needed fact was never recorded; else at risk when a condition is open and its day near; else
 * evidenced. Checked by hand in tests/domain/coverage/coverCases.test.ts.
 */
import type { CoverDate, SheetCover } from '../procedure/modelSheet.ts';
import { type ExplainedService, explainService } from '../service/explainService.ts';
import { nextService } from '../service/nextService.ts';
import type { CoverFacts } from './coverFacts.ts';
import { type CoverLaw, coverLawsOf } from './coverLaws.ts';
import {
  type CoverReason,
  ownerReasons,
  recordReasons,
  registrationReason,
  serviceReasons,
  weightOf,
} from './coverReasons.ts';
import { type Derivation, derive } from './derivation.ts';
import type { KnownDate } from './knownDate.ts';
import { cautiousDay } from './period.ts';
import { registrationDerivation } from './registrationDeadline.ts';
import { type RegistrationStanding, registrationStanding } from './registrationStanding.ts';

export const COVER_STATES = ['evidenced', 'at-risk', 'not-evidenced', 'past-its-date'] as const;
export type CoverState = (typeof COVER_STATES)[number];

export type CoverPart = SheetCover['terms'][number]['part'];

export type CoverTerm = {
  readonly part: CoverPart;
  readonly state: CoverState;
  readonly startsOn: string | null;
  /** null: no start is known, or the maker states no length for this case. */
  readonly endsOn: string | null;
  readonly ends: Derivation | null;
  /** Which of the maker's lengths was counted. `same`: there is only one. */
  readonly length: 'registered' | 'unregistered' | 'same' | 'other-use';
  /** The other length's last day, where it is another. */
  readonly otherwiseEndsOn: string | null;
  readonly reasons: readonly CoverReason[];
  /** The next day by which something has to be done for this term. */
  readonly latestDay: { readonly on: string; readonly what: 'registration' | 'service' | 'transfer' } | null;
  readonly missing: readonly CoverReason[];
  /** A date the term is counted from, not on file. */
  readonly missingDate: CoverDate | null;
};

export type ApplianceCover = {
  readonly terms: readonly CoverTerm[];
  readonly registration: { readonly kind: RegistrationStanding['kind']; readonly due: Derivation | null };
  readonly service: ExplainedService | null;
  readonly transfers: readonly {
    readonly on: string;
    readonly latest: Derivation;
    readonly toldMakerOn: string | null;
  }[];
  readonly laws: readonly { readonly law: CoverLaw; readonly until: Derivation | null }[];
};

export function applianceCover(facts: CoverFacts): ApplianceCover {
  const standing = registrationStanding(facts);
  const next = nextService(facts);
  return {
    terms: (facts.cover?.terms ?? []).map((term) => termOf(facts, term, standing)),
    registration: {
      kind: standing.kind,
      due: standing.due === null ? null : registrationDerivation(facts.cover, standing.due),
    },
    service: next === null ? null : explainService(next),
    transfers: transfersOf(facts),
    laws: lawsOf(facts),
  };
}

type Term = SheetCover['terms'][number];

function termOf(facts: CoverFacts, term: Term, standing: RegistrationStanding): CoverTerm {
  const start = facts.dates.find(({ kind }) => kind === term.countedFrom);
  const { length, months, otherwiseMonths } = lengthOf(facts, term, standing);
  const isOtherUseStated = term.otherUseMonths !== undefined;
  const always = [...recordReasons(facts, isOtherUseStated), ...ownerReasons(facts)];
  const registering = length === 'same' || length === 'other-use' ? [] : [registrationReason(facts, standing)];
  if (start === undefined || months === 0) {
    const reasons = [...registering, ...always];
    return {
      part: term.part,
      state: 'not-evidenced',
      startsOn: start === undefined ? null : cautiousDay(start),
      endsOn: null,
      ends: null,
      length,
      otherwiseEndsOn: null,
      reasons,
      latestDay: latestDayOf(reasons),
      missing: reasons.filter(isMissing),
      missingDate: start === undefined ? term.countedFrom : null,
    };
  }
  const ends = endOf(start, months);
  const reasons = [...registering, ...serviceReasons(facts, ends.on), ...always];
  return {
    part: term.part,
    state: stateOf(facts.today, ends.on, reasons),
    startsOn: ends.fromOn,
    endsOn: ends.on,
    ends,
    length,
    otherwiseEndsOn: otherwiseMonths === null || otherwiseMonths === 0 ? null : endOf(start, otherwiseMonths).on,
    reasons,
    latestDay: latestDayOf(reasons),
    missing: reasons.filter(isMissing),
    missingDate: null,
  };
}

function lengthOf(
  facts: CoverFacts,
  term: Term,
  standing: RegistrationStanding,
): { readonly length: CoverTerm['length']; readonly months: number; readonly otherwiseMonths: number | null } {
  const stated = facts.cover?.conditions.use;
  const { use } = facts.evidence;
  if (term.otherUseMonths !== undefined && use !== null && stated !== 'any' && use !== stated)
    return { length: 'other-use', months: term.otherUseMonths, otherwiseMonths: null };
  const { registeredMonths, unregisteredMonths } = term;
  if (registeredMonths === unregisteredMonths)
    return { length: 'same', months: registeredMonths, otherwiseMonths: null };
  return standing.countsAsRegistered
    ? { length: 'registered', months: registeredMonths, otherwiseMonths: unregisteredMonths }
    : { length: 'unregistered', months: unregisteredMonths, otherwiseMonths: registeredMonths };
}

function endOf(start: KnownDate, months: number): Derivation {
  return derive({
    countedFrom: start.kind,
    fromOn: cautiousDay(start),
    precision: start.precision,
    period: { months },
  });
}

/** A registration that was missed shortens the term instead: the shorter one can still be evidenced. */
function stateOf(today: string, endsOn: string, reasons: readonly CoverReason[]): CoverState {
  if (today > endsOn) return 'past-its-date';
  const weighing = reasons.filter(
    ({ code }) => code !== 'registration-missed' && code !== 'registration-late' && code !== 'registration-no-date',
  );
  if (weighing.some(isMissing)) return 'not-evidenced';
  return weighing.some((reason) => weightOf(reason) === 'open') ? 'at-risk' : 'evidenced';
}

function isMissing(reason: CoverReason): boolean {
  return weightOf(reason) === 'missing';
}

function latestDayOf(reasons: readonly CoverReason[]): CoverTerm['latestDay'] {
  const open = reasons.flatMap((reason): NonNullable<CoverTerm['latestDay']>[] => {
    if (reason.code === 'registration-open') return [{ on: reason.latestOn, what: 'registration' }];
    if (reason.code === 'service-open') return [{ on: reason.latestOn, what: 'service' }];
    return reason.code === 'transfer-open' ? [{ on: reason.latestOn, what: 'transfer' }] : [];
  });
  return open.sort((a, b) => (a.on < b.on ? -1 : 1))[0] ?? null;
}

function transfersOf(facts: CoverFacts): ApplianceCover['transfers'] {
  const days = facts.cover?.conditions.transferWindowDays ?? null;
  if (days === null) return [];
  return facts.ownerChanges.map(({ on, toldMakerOn }) => ({
    on,
    toldMakerOn,
    latest: derive({ countedFrom: 'owner-change', fromOn: on, precision: 'day', period: { days } }),
  }));
}

/** Delivery is not on file as such: the sale stands for it, else the installation. */
function lawsOf(facts: CoverFacts): ApplianceCover['laws'] {
  const delivered =
    facts.dates.find(({ kind }) => kind === 'sold') ?? facts.dates.find(({ kind }) => kind === 'installed');
  return coverLawsOf({ ...facts.place, use: facts.evidence.use }).map((law) => ({
    law,
    until: law.effect.kind === 'minimum-months' && delivered !== undefined ? endOf(delivered, law.effect.months) : null,
  }));
}
