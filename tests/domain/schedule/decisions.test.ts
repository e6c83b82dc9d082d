/** What presses today: common practice of a dispatcher's morning, no source for the days. */
import { describe, expect, it } from 'vitest';
import type { Conflict } from '../../../domain/schedule/dayConflicts.ts';
import { addDays } from '../../../domain/schedule/dayMinutes.ts';
import {
  type DaysAhead,
  decisionsToMake,
  JOB_DAYS,
  type JobWaiting,
  LICENCE_DAYS,
  type PersonAtWork,
  type VisitAhead,
} from '../../../domain/schedule/decisions.ts';

const TODAY = '2026-03-02';
const inDays = (days: number) => addDays(TODAY, days);

const visit = (visitId: string, patch: Partial<VisitAhead> = {}): VisitAhead => ({
  visitId,
  plannedOn: inDays(1),
  state: 'planned',
  promisedOn: inDays(1),
  jobs: [],
  ...patch,
});
const person = (staffId: string, patch: Partial<PersonAtWork> = {}): PersonAtWork => ({
  staffId,
  roles: ['technician'],
  licences: [{ validTo: inDays(LICENCE_DAYS + 1) }],
  instruments: [
    {
      instrumentId: `analyser of ${staffId}`,
      label: 'Analyser',
      kinds: ['analyser'],
      isShared: false,
      calibrations: [{ calibratedOn: inDays(-100), dueOn: inDays(200) }],
    },
  ],
  ...patch,
});
const LATE: Conflict = { code: 'home-late', homeMin: 1100, hoursToMin: 1020 };
const OVERLAP: Conflict = { code: 'overlap', otherVisitId: 'other' };
const ELSEWHERE: Conflict = {
  code: 'obstacle',
  obstacle: { code: 'licence-elsewhere', places: ['Maine'], region: 'NS', country: 'CA' },
};
type Ahead = DaysAhead<VisitAhead, JobWaiting, PersonAtWork, string>;
const found = (patch: Partial<Ahead>) =>
  decisionsToMake<VisitAhead, JobWaiting, PersonAtWork, string>({
    today: TODAY,
    visits: [],
    waiting: [],
    people: [],
    outings: [],
    plans: true,
    ...patch,
  });
const seen = (one: VisitAhead, ...conflicts: readonly Conflict[]) => ({ visit: one, isMovable: true, conflicts });
const kinds = (patch: Partial<Ahead>) => found(patch).map(({ kind }) => kind);

describe('what is to be decided', () => {
  it('is nothing where everybody was told, everything fits and every paper is in date', () => {
    expect(kinds({ visits: [seen(visit('a'))], people: [{ person: person('p'), elsewhere: null }] })).toEqual([]);
  });

  it('begins with what cannot be as it is, then work without a day, then what is only late', () => {
    const decisions = found({
      visits: [seen(visit('late'), LATE), seen(visit('twice'), OVERLAP)],
      waiting: [{ priority: 0, latestOn: inDays(3) }],
    });
    expect(decisions.map((one) => ('visit' in one ? one.visit.visitId : one.kind))).toEqual([
      'twice',
      'waiting-job',
      'late',
    ]);
    expect(decisions[0]).toMatchObject({ kind: 'does-not-fit', isGrave: true });
  });

  it('takes work up two weeks before its latest day, and what comes before everything else without any', () => {
    const waiting = [inDays(JOB_DAYS), inDays(JOB_DAYS + 1), inDays(-1), null].map((latestOn) => ({
      priority: 0,
      latestOn,
    }));
    expect(found({ waiting: [...waiting, { priority: 3, latestOn: null }] })).toMatchObject([
      { daysLeft: JOB_DAYS },
      { daysLeft: -1 },
      { daysLeft: null },
    ]);
  });

  it('asks of the visits of the next days whether they stand and whether anybody was told, and of no later one', () => {
    const pencilled = visit('pencilled', { state: 'pencilled', promisedOn: null });
    const untold = visit('untold', { promisedOn: null });
    const later = visit('later', { promisedOn: null, plannedOn: inDays(6) });
    const begun = { ...seen(visit('begun', { state: 'started', promisedOn: null })), isMovable: false };
    const visits = [seen(pencilled), seen(untold), seen(later), begun];
    expect(kinds({ visits })).toEqual(['still-pencilled', 'nobody-told']);
    // Whoever does not plan is not asked to.
    expect(kinds({ visits, waiting: [{ priority: 3, latestOn: null }], plans: false })).toEqual([]);
  });

  it('says once of a person what would be said of each of their visits', () => {
    const visits = [seen(visit('a'), ELSEWHERE), seen(visit('b'), ELSEWHERE)];
    const people = [{ person: person('p'), elsewhere: 'Maine, work in Nova Scotia' }];
    expect(found({ visits, people })).toMatchObject([{ kind: 'licence-elsewhere', person: { staffId: 'p' } }]);
  });

  it('renews licences two months ahead, by the one that lasts longest, and misses a technician’s analyser', () => {
    const ends = (...days: readonly number[]) =>
      person('p', { licences: days.map((one) => ({ validTo: inDays(one) })) });
    expect(kinds({ people: [{ person: ends(LICENCE_DAYS), elsewhere: null }] })).toEqual(['licence-ends']);
    expect(kinds({ people: [{ person: ends(5, LICENCE_DAYS + 1), elsewhere: null }] })).toEqual([]);
    const without = { instruments: [] };
    expect(kinds({ people: [{ person: person('p', without), elsewhere: null }] })).toEqual(['analyser-out-of-date']);
    expect(kinds({ people: [{ person: person('p', { ...without, roles: ['helper'] }), elsewhere: null }] })).toEqual(
      [],
    );
  });

  it('sees two people out on one day with one shared analyser', () => {
    const shared = person('p').instruments.map((one) => ({ ...one, instrumentId: 'shared', isShared: true }));
    const both = ['p', 'q'].map((staffId) => ({ person: person(staffId, { instruments: shared }), elsewhere: null }));
    const outings = ['p', 'q'].map((staffId) => ({ on: inDays(1), staffId, kinds: ['analyser' as const] }));
    expect(found({ people: both, outings })).toMatchObject([
      { kind: 'shared-instrument', shortage: { on: inDays(1), staffIds: ['p', 'q'], inDate: 1 } },
    ]);
  });
});
