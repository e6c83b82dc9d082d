/**
 * Field case F-18, "the card on the pile": the warranty card lay on a pile: weeks later it was filled in but for model
 * and serial, and 30 days from installation ran out. Here the day counted from, and the dates that must be there for
 * it.
 */
import { describe, expect, it } from 'vitest';
import { applianceCover } from '../../domain/coverage/applianceCover.ts';
import { deadlineAlarm } from '../../domain/coverage/deadlineAlarm.ts';
import { derivationSentence } from '../../domain/coverage/derivation.ts';
import { registrationDeadline } from '../../domain/coverage/registrationDeadline.ts';
import { dateKindsConfused } from '../../domain/judgement/mistakes/dateKindsConfused.ts';
import { GENERAL_SERVICE_RULE } from '../../domain/service/serviceRule.ts';

const dates = [{ kind: 'installed' as const, on: '2026-10-14', precision: 'day' as const }];

describe('F-18: the card on the pile', () => {
  it('30 days from 14 October is 13 November; on 5 November 8 days are left', () => {
    expect(registrationDeadline({ cover: null, dates, today: '2026-11-05' })).toMatchObject({
      dueOn: '2026-11-13',
      daysLeft: 8,
      countedFrom: 'installed',
      isAssumed: true,
    });
  });

  it('shows the last day by every date that is known', () => {
    const all = [
      ...dates,
      { kind: 'started' as const, on: '2026-10-20', precision: 'day' as const },
      { kind: 'occupied' as const, on: '2026-10-10', precision: 'day' as const },
    ];
    expect(dateKindsConfused({ cover: null, dates: all, isNewBuild: true, today: '2026-11-05' })).toMatchObject([
      {
        why: 'lived-in-before-installed',
        lastDays: [
          { kind: 'occupied', dueOn: '2026-11-09' },
          { kind: 'installed', dueOn: '2026-11-13' },
          { kind: 'started', dueOn: '2026-11-19' },
        ],
      },
    ]);
  });

  it('says how the last day came about, and calls two weeks and a week before it', () => {
    const facts = {
      today: '2026-11-05',
      cover: null,
      serviceRule: GENERAL_SERVICE_RULE,
      dates,
      registration: { submittedOn: null, confirmedOn: null, number: null },
      servicesOn: [],
      agreements: [],
      evidence: { isWaterQualityRecorded: false, isInstallerLicensed: false, use: null },
      ownerChanges: [],
      place: { country: 'CA', region: null },
    };
    const { registration } = applianceCover(facts);
    expect(registration.kind).toBe('open');
    expect(registration.due === null ? '' : derivationSentence(registration.due)).toContain(
      '30 days from installation on 14 Oct 2026, counting the day after as day 1: Fri 13 Nov 2026.',
    );
    const alarmOn = (today: string) => deadlineAlarm({ countedFromOn: '2026-10-14', dueOn: '2026-11-13', today });
    expect(['2026-10-28', '2026-10-29', '2026-11-05', '2026-11-06', '2026-11-14'].map(alarmOn)).toEqual([
      'none',
      'half',
      'days-14',
      'days-7',
      'late',
    ]);
  });
});
