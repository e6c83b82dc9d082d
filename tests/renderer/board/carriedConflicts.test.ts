import { describe, expect, it } from 'vitest';
import type { BoardTechnician, UnplacedJob } from '../../../electron/contract/board.ts';
import type { BoardData } from '../../../renderer/board/boardModel.ts';
import { findFirstFit } from '../../../renderer/board/carriedConflicts.ts';

const DAYS = ['2026-03-02', '2026-03-03'];
const FROM = { on: '2026-03-02', minute: 0 };

describe('findFirstFit', () => {
  it('should begin with the first hour of the first person who may', () => {
    expect(findFirstFit(boardOf([person('a', { licences: [] }), person('b')]), DAYS, JOB, FROM)).toEqual({
      staffId: 'b',
      on: '2026-03-02',
      startMin: 480,
    });
  });

  it('should not begin in the past: by the next quarter of an hour today, and never on a day before', () => {
    const data = boardOf([person('a')]);
    expect(findFirstFit(data, DAYS, JOB, { on: '2026-03-02', minute: 601 })?.startMin).toBe(615);
    expect(findFirstFit(data, DAYS, JOB, { on: '2026-03-03', minute: 0 })?.on).toBe('2026-03-03');
    expect(findFirstFit(data, DAYS, JOB, { on: '2026-03-04', minute: 0 })).toBeNull();
  });

  it('should go on to the next day where somebody is away', () => {
    const away = { absenceId: 'x', staffId: 'a', reason: 'ill', fromOn: '2026-03-02', toOn: '2026-03-02' };
    const data = boardOf([person('a', { absences: [{ ...away, fromMin: null, toMin: null }] })]);
    expect(findFirstFit(data, DAYS, JOB, FROM)?.on).toBe('2026-03-03');
  });

  it('finds a place though a licence names another province than the site: that is a question, no obstacle', () => {
    const licence = { fuel: null, maxKw: null, validFrom: '2025-01-01', validTo: '2027-01-01', place: 'NS' };
    const data = boardOf([person('a', { licences: [licence] })]);
    expect(findFirstFit(data, DAYS, { ...JOB, region: 'British Columbia' }, FROM)).toEqual({
      staffId: 'a',
      on: '2026-03-02',
      startMin: 480,
    });
  });

  it('should leave a place that the latest day does not allow, and say that nothing fits', () => {
    const late = { ...JOB, latestOn: '2026-03-01' };
    expect(findFirstFit(boardOf([person('a')]), DAYS, late, FROM)).toBeNull();
  });
});

function boardOf(technicians: readonly BoardTechnician[]): BoardData {
  const firm = { street: null, postcode: null, city: null, latitude: null, longitude: null };
  return {
    technicians: [...technicians],
    visits: [],
    unplaced: [JOB],
    travel: { roadFactor: 1.3, speedKmPerH: 50, firm, pairs: [] },
  };
}

function person(staffId: string, change: Partial<BoardTechnician> = {}): BoardTechnician {
  return {
    staffId,
    name: `Invented ${staffId}`,
    initials: staffId,
    roles: ['technician'],
    activeFrom: '2020-01-01',
    activeTo: null,
    base: { street: null, postcode: null, city: null, latitude: null, longitude: null },
    skills: [],
    hours: [1, 2, 3, 4, 5].map((weekday) => ({
      weekday,
      fromMin: 480,
      toMin: 1020,
      breakFromMin: null,
      breakToMin: null,
    })),
    absences: [],
    licences: [{ fuel: null, maxKw: null, validFrom: '2025-01-01', validTo: '2027-01-01', place: null }],
    trainings: [],
    instruments: [
      {
        instrumentId: `analyser of ${staffId}`,
        label: 'Analyser',
        kinds: ['analyser'],
        isShared: false,
        calibrations: [{ calibratedOn: '2025-12-02', dueOn: '2026-12-01' }],
      },
    ],
    ...change,
  };
}

const JOB: UnplacedJob = {
  jobId: 'j',
  kind: 'repair',
  applianceId: 'p',
  serial: 'S-1',
  maker: 'Invented maker',
  model: 'T 24',
  fuel: null,
  ratedInputKw: 25,
  region: null,
  country: null,
  openMakeSafes: 0,
  openNotices: [],
  instruments: ['analyser'],
  insistsOnTraining: false,
  insistsOnInstruments: false,
  openReadiness: [],
  agedReadiness: [],
  isDone: false,
  openedAt: '2026-03-01T12:00:00.000Z',
  priority: 1,
  wantedFromOn: null,
  wantedToOn: null,
  latestOn: null,
  latestWhy: null,
  expectedMin: null,
  skills: [],
  siteId: 's',
  customerId: 'c',
  customerName: 'Lowri Kestrel',
  street: '9 Fathom Street',
  postcode: null,
  city: 'Graven Bay',
  latitude: null,
  longitude: null,
  suggestedMin: 120,
};
