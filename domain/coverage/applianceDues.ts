/**
 * Everything that falls due at one appliance, as rows for the lists. Nothing here depends on today: a row stays right
 * until something is recorded, and what today makes of it (days left, late) is worked out where it is read.
 */

import type { SheetCover } from '../procedure/modelSheet.ts';
import { firstYearContacts } from '../service/firstYearContacts.ts';
import { nextService, type ServiceFacts } from '../service/nextService.ts';
import { roundMonth } from '../service/roundMonth.ts';
import type { Sureness } from '../service/serviceRule.ts';
import { addMonths, cautiousDay } from './period.ts';
import { registrationDue } from './registrationDeadline.ts';

export const REGISTRATION_STAGES = ['not-begun', 'recording', 'submitted', 'confirmed'] as const;
export type RegistrationStage = (typeof REGISTRATION_STAGES)[number];

export type DueFacts = ServiceFacts & {
  readonly cover: SheetCover | null;
  readonly stage: RegistrationStage;
  /** Days of finished visits of any kind. */
  readonly visitsOn: readonly string[];
  /** First-year contacts of boilers started before this day are over and left out. */
  readonly contactsSince: string;
  readonly closedContacts: readonly ('first-call' | 'look-in')[];
  /** Taken down or moved away: nothing is serviced there any more. */
  readonly isPlaced: boolean;
};

export type ApplianceDue = {
  readonly kind: 'registration' | 'service' | 'first-call' | 'look-in';
  readonly isOpen: boolean;
  readonly windowFrom: string;
  readonly dueOn: string;
  readonly latestOn: string;
  readonly goneOn: string | null;
  readonly sureness: Sureness;
  readonly stage: RegistrationStage | null;
  /** `2026-10`: the month of its round. */
  readonly month: string;
};

export function applianceDues(facts: DueFacts): readonly ApplianceDue[] {
  // What was taken out of use falls due for nothing.
  const dues = facts.isPlaced ? [registrationRow(facts), serviceRow(facts), ...contactRows(facts)] : [];
  return dues.filter((due) => due !== null);
}

/** A registration nobody began is forgotten a year after its last day: an old boiler taken on is not late with anything. */
const NOT_BEGUN_MONTHS = 12;

function registrationRow(facts: DueFacts): ApplianceDue | null {
  const due = registrationDue(facts);
  if (due === null) return null;
  return {
    kind: 'registration',
    isOpen: facts.stage !== 'confirmed',
    windowFrom: due.countedFromOn,
    dueOn: due.dueOn,
    latestOn: due.dueOn,
    goneOn: facts.stage === 'not-begun' ? addMonths(due.dueOn, NOT_BEGUN_MONTHS) : null,
    sureness: registrationSureness(facts, due.isAssumed || due.precision !== 'day'),
    stage: facts.stage,
    month: due.dueOn.slice(0, 7),
  };
}

function registrationSureness(facts: DueFacts, isAssumed: boolean): Sureness {
  if (facts.serviceRule.source === 'general-rule') return 'general-rule';
  return isAssumed ? 'date-assumed' : 'maker-sheet';
}

function serviceRow(facts: DueFacts): ApplianceDue | null {
  const next = nextService(facts);
  if (next === null) return null;
  return {
    kind: 'service',
    isOpen: true,
    windowFrom: next.windowFrom,
    dueOn: next.dueOn,
    latestOn: next.latestOn,
    goneOn: null,
    sureness: next.sureness,
    stage: null,
    month: roundMonth(next),
  };
}

function contactRows(facts: DueFacts): readonly ApplianceDue[] {
  const started = facts.dates.find(({ kind, precision }) => kind === 'started' && precision === 'day');
  if (started === undefined || started.on < facts.contactsSince) return [];
  return firstYearContacts({
    startedOn: cautiousDay(started),
    closed: facts.closedContacts,
    visitsOn: facts.visitsOn,
  }).map(({ kind, windowFrom, latestOn, goneOn }) => ({
    kind,
    isOpen: true,
    windowFrom,
    dueOn: latestOn,
    latestOn,
    goneOn,
    sureness: 'general-rule',
    stage: null,
    month: windowFrom.slice(0, 7),
  }));
}
