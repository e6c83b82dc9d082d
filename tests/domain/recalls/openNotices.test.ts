/** Which notices stand open against an appliance: common practice, a recalled unit that nobody has cleared is not fired. */
import { describe, expect, it } from 'vitest';
import { type Notice, openNotices, type RecallOutcome } from '../../../domain/recalls/openNotices.ts';

const NOTICE: Notice = {
  recallId: 'r1',
  title: 'Tag may say the wrong fuel',
  number: 'N-1',
  source: 'the maker',
  whatToDo: 'Do not use it before the tag has been looked at.',
  mayFire: false,
  maker: 'Invented maker',
  models: ['X 24'],
  serialRanges: [{ from: 'AB5071000', to: 'AB5327000' }],
  altitudeMinM: null,
  altitudeMaxM: 500,
};
const UNIT = { maker: 'INVENTED Maker', model: 'X24', serial: 'AB5100233', altitudeM: 40 };

function openFor(unit: Partial<typeof UNIT> | { altitudeM: null }, outcome: RecallOutcome | null = null) {
  const outcomes = new Map(outcome === null ? [] : [['r1', outcome] as const]);
  return openNotices([NOTICE], { ...UNIT, ...unit }, outcomes);
}

describe('openNotices', () => {
  it('holds one that fits by maker, model, serial and altitude', () => {
    expect(openFor({})).toMatchObject([{ recallId: 'r1', doubts: [], isRefused: false, whatToDo: NOTICE.whatToDo }]);
  });

  it.each([{ maker: 'Another' }, { model: 'X 30' }, { serial: 'AB5327001' }, { altitudeM: 501 }])(
    'leaves out what is about others: %j',
    (unit) => {
      expect(openFor(unit)).toEqual([]);
    },
  );

  it('counts a doubt against the appliance until somebody has looked', () => {
    expect(openFor({ altitudeM: null })).toMatchObject([{ doubts: ['altitude-missing'] }]);
    expect(openFor({ serial: 'AB51OO233' })).toMatchObject([{ doubts: ['serial-look-alike'] }]);
  });

  it.each([
    ['done', 0],
    ['not-affected', 0],
    ['refused', 1],
  ] as const)('is open after “%s”: %i', (outcome, count) => {
    const open = openFor({}, outcome);
    expect(open).toHaveLength(count);
    expect(open.every(({ isRefused }) => isRefused)).toBe(true);
  });
});
