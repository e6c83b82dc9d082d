/** Why a term stands as it does: each of the maker's stated conditions with what the record shows of it. */
import { assertNever } from '../result.ts';
import { type ServiceAnchor, serviceAnchorOf } from '../service/serviceRule.ts';
import { periodsOver, serviceSchedule } from '../service/serviceSchedule.ts';
import type { CoverFacts } from './coverFacts.ts';
import { addDays } from './period.ts';
import type { RegistrationStanding } from './registrationStanding.ts';

export type CoverReason =
  | { readonly code: 'registered'; readonly on: string }
  | { readonly code: 'registration-open'; readonly latestOn: string }
  | { readonly code: 'registration-unconfirmed'; readonly on: string }
  | { readonly code: 'registration-late'; readonly on: string; readonly latestOn: string }
  | { readonly code: 'registration-missed'; readonly latestOn: string }
  | { readonly code: 'registration-no-date' }
  | { readonly code: 'services-done'; readonly count: number }
  | { readonly code: 'service-open'; readonly nth: number; readonly dueOn: string; readonly latestOn: string }
  | { readonly code: 'service-late'; readonly nth: number; readonly on: string; readonly latestOn: string }
  | { readonly code: 'service-missed'; readonly nth: number; readonly latestOn: string }
  | { readonly code: 'service-no-date' }
  | { readonly code: 'water-quality-recorded' }
  | { readonly code: 'water-quality-missing' }
  | { readonly code: 'installer-licensed' }
  | { readonly code: 'installer-licence-missing' }
  | { readonly code: 'use-as-stated' }
  | { readonly code: 'use-unknown' }
  | { readonly code: 'use-differs'; readonly isLengthStated: boolean }
  | { readonly code: 'owner-changed'; readonly on: string }
  | { readonly code: 'transfer-told'; readonly on: string; readonly latestOn: string }
  | { readonly code: 'transfer-open'; readonly on: string; readonly latestOn: string }
  | { readonly code: 'transfer-late'; readonly on: string; readonly latestOn: string }
  | { readonly code: 'transfer-missed'; readonly on: string; readonly latestOn: string };

/** `fine`: there is evidence. `open`: its day is still to come, and near. `missing`: its day is over, or it was never recorded. */
export function weightOf(reason: CoverReason): 'fine' | 'open' | 'missing' {
  switch (reason.code) {
    case 'registered':
    case 'services-done':
    case 'water-quality-recorded':
    case 'installer-licensed':
    case 'use-as-stated':
    case 'transfer-told':
      return 'fine';
    case 'registration-open':
    case 'registration-unconfirmed':
    case 'service-open':
    case 'transfer-open':
      return 'open';
    case 'use-differs':
      return reason.isLengthStated ? 'fine' : 'missing';
    case 'registration-late':
    case 'registration-missed':
    case 'registration-no-date':
    case 'service-late':
    case 'service-missed':
    case 'service-no-date':
    case 'water-quality-missing':
    case 'installer-licence-missing':
    case 'use-unknown':
    case 'owner-changed':
    case 'transfer-late':
    case 'transfer-missed':
      return 'missing';
    default:
      return assertNever(reason);
  }
}

/** A service that is due is on the mind of the office in its last 30 days; common practice, no source. */
const NEAR_DAYS = 30;

export function registrationReason(facts: CoverFacts, standing: RegistrationStanding): CoverReason {
  const { submittedOn, confirmedOn } = facts.registration;
  const latestOn = standing.due?.dueOn ?? '';
  switch (standing.kind) {
    case 'confirmed':
      return { code: 'registered', on: confirmedOn ?? '' };
    case 'submitted':
      return { code: 'registration-unconfirmed', on: submittedOn ?? '' };
    case 'submitted-late':
      return { code: 'registration-late', on: submittedOn ?? '', latestOn };
    case 'open':
      return { code: 'registration-open', latestOn };
    case 'missed':
      return { code: 'registration-missed', latestOn };
    case 'no-date':
      return { code: 'registration-no-date' };
    default:
      return assertNever(standing.kind);
  }
}

/** Only services that fell due before the term's last day count for it. */
export function serviceReasons(facts: CoverFacts, termEndsOn: string): readonly CoverReason[] {
  const anchor = anchorOf(facts);
  if (anchor === null) return [{ code: 'service-no-date' }];
  const schedule = serviceSchedule(facts.serviceRule, anchor, facts.servicesOn);
  const over = periodsOver(facts.serviceRule, anchor, schedule, facts.today).filter(({ dueOn }) => dueOn < termEndsOn);
  const reasons = over.flatMap(({ nth, doneOn, latestOn }): CoverReason[] => {
    if (doneOn === null) return [{ code: 'service-missed', nth, latestOn }];
    return doneOn > latestOn ? [{ code: 'service-late', nth, on: doneOn, latestOn }] : [];
  });
  const inTime = over.filter(({ doneOn, latestOn }) => doneOn !== null && doneOn <= latestOn).length;
  const { next } = schedule;
  const isNear = facts.today <= next.latestOn && facts.today >= addDays(next.latestOn, -NEAR_DAYS);
  return [
    ...(inTime === 0 ? [] : [{ code: 'services-done', count: inTime } as const]),
    ...reasons,
    ...(isNear && next.dueOn < termEndsOn
      ? [{ code: 'service-open', nth: next.nth, dueOn: next.dueOn, latestOn: next.latestOn } as const]
      : []),
  ];
}

function anchorOf(facts: Pick<CoverFacts, 'serviceRule' | 'dates' | 'servicesOn'>): ServiceAnchor | null {
  return serviceAnchorOf(facts.serviceRule, facts.dates, facts.servicesOn);
}

/** The conditions that are either on record or not, whatever day it is. */
export function recordReasons(facts: CoverFacts, isOtherUseStated: boolean): readonly CoverReason[] {
  const conditions = facts.cover?.conditions;
  if (conditions === undefined) return [];
  const { evidence } = facts;
  const reasons: CoverReason[] = [];
  if (conditions.waterQualityRecorded)
    reasons.push({ code: evidence.isWaterQualityRecorded ? 'water-quality-recorded' : 'water-quality-missing' });
  if (conditions.licensedInstaller)
    reasons.push({ code: evidence.isInstallerLicensed ? 'installer-licensed' : 'installer-licence-missing' });
  if (conditions.use !== 'any') {
    if (evidence.use === null) reasons.push({ code: 'use-unknown' });
    else if (evidence.use === conditions.use) reasons.push({ code: 'use-as-stated' });
    else reasons.push({ code: 'use-differs', isLengthStated: isOtherUseStated });
  }
  return reasons;
}

export function ownerReasons(facts: CoverFacts): readonly CoverReason[] {
  const conditions = facts.cover?.conditions;
  if (conditions === undefined) return [];
  const windowDays = conditions.transferWindowDays;
  return facts.ownerChanges.flatMap(({ on, toldMakerOn }): CoverReason[] => {
    // Neither a window nor the first owner alone: the cover stays with the appliance.
    if (windowDays === null) return conditions.originalOwner ? [{ code: 'owner-changed', on }] : [];
    const latestOn = addDays(on, windowDays);
    if (toldMakerOn !== null)
      return [{ code: toldMakerOn <= latestOn ? 'transfer-told' : 'transfer-late', on, latestOn }];
    return [{ code: facts.today <= latestOn ? 'transfer-open' : 'transfer-missed', on, latestOn }];
  });
}
