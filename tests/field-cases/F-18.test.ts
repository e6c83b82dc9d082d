/** Field case F-18: the card on the pile. The day counted from, and the dates that must be there for it. */
import { describe, expect, it } from 'vitest';
import { registrationDeadline } from '../../domain/coverage/registrationDeadline.ts';
import { dateKindsConfused } from '../../domain/judgement/mistakes/dateKindsConfused.ts';

const dates = [{ kind: 'installed' as const, on: '2026-10-14', precision: 'day' as const }];

describe('F-18', () => {
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
});
