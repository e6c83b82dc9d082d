import { describe, expect, it } from 'vitest';
import type { Conflict } from '../../../domain/schedule/dayConflicts.ts';
import type { Obstacle } from '../../../domain/schedule/obstacles.ts';
import { isOfPapers } from '../../../domain/schedule/ofPapers.ts';
import { everyVisitFitsWords, lackingWords, type Papers, papersOf } from '../../../renderer/board/ofPapers.ts';

const NO_ANALYSER = { code: 'no-instrument', kind: 'analyser', isDemanded: false } as const;
const WEEK = ['2026-03-02', '2026-03-03', '2026-03-04', '2026-03-05', '2026-03-06'];

describe('papersOf', () => {
  it('does not say it of the whole week when the analyser runs out on Thursday: from Friday', () => {
    const papers = papersOf(row('2026-03-05', { '2026-03-06': [NO_ANALYSER] }));
    expect(papers.lacking).toEqual([{ kind: 'analyser', fromOn: '2026-03-06' }]);
    expect(lackingWords(papers.lacking, WEEK[0])).toBe('no analyser in date from Fri 6 Mar');
  });

  it('should name no day where it holds for all that are shown, and be silent where no visit needs one', () => {
    const papers = papersOf(row(null, { '2026-03-04': [NO_ANALYSER, { ...NO_ANALYSER, kind: 'manometer' }] }));
    expect(lackingWords(papers.lacking, WEEK[0])).toBe('no analyser or manometer in date');
    expect(papersOf(row(null, {})).lacking).toEqual([]);
  });

  it('leaves to each visit what its maker’s sheet demands: it must not go out so', () => {
    const demanded: Conflict = { code: 'obstacle', obstacle: { ...NO_ANALYSER, isDemanded: true } };
    expect(isOfPapers(demanded)).toBe(false);
    expect(isOfPapers({ code: 'obstacle', obstacle: NO_ANALYSER })).toBe(true);
    expect(papersOf(row(null, { '2026-03-04': [{ ...NO_ANALYSER, isDemanded: true }] })).lacking).toEqual([]);
  });

  it('asks once of a person where the licence counts, not at each visit', () => {
    const asked: Obstacle = { code: 'licence-elsewhere', places: ['NS'], region: 'BC', country: 'CA' };
    expect(papersOf(row('2027-01-01', { '2026-03-02': [asked], '2026-03-04': [asked] })).elsewhere).toEqual({
      places: ['NS'],
      regions: ['BC'],
    });
  });
});

describe('everyVisitFitsWords', () => {
  it('does not say that all is well while somebody has no analyser in date', () => {
    const lacking: Papers = { lacking: [{ kind: 'analyser', fromOn: '2026-03-02' }], elsewhere: null };
    const asked: Papers = { lacking: [], elsewhere: { places: ['NS'], regions: ['BC'] } };
    const well: Papers = { lacking: [], elsewhere: null };
    expect(everyVisitFitsWords([lacking, well, lacking])).toBe(
      'Every visit fits; 2 people without an analyser in date.',
    );
    expect(everyVisitFitsWords([lacking, asked])).toBe(
      'Every visit fits; 1 person without an analyser in date, 1 person with a licence for another state or province.',
    );
    expect(everyVisitFitsWords([well])).toBe('Every visit fits.');
  });
});

/** What does not fit on each day, all of it at one visit. */
function row(analyserDueOn: string | null, found: Readonly<Record<string, readonly Obstacle[]>>) {
  const calibrations = analyserDueOn === null ? [] : [{ calibratedOn: '2025-06-01', dueOn: analyserDueOn }];
  return {
    technician: {
      instruments: [
        { instrumentId: 'a-1', label: 'Analyser 1', kinds: ['analyser' as const], isShared: false, calibrations },
      ],
    },
    days: WEEK.map((on) => ({
      on,
      blocks: [{ conflicts: (found[on] ?? []).map((obstacle): Conflict => ({ code: 'obstacle', obstacle })) }],
    })),
  };
}
