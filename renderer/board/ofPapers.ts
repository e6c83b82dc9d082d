/** What is said once of a person and not of each of their visits: it would hide the visits that really do not fit. */
import type { Conflict } from '../../domain/schedule/dayConflicts.ts';
import { shortDayWords } from '../kit/dayWords.ts';
import { sitePlaceWords } from '../kit/places.ts';
import type { BoardBlock, BoardRowModel } from './boardModel.ts';

export function isOfPapers(conflict: Conflict): boolean {
  return conflict.code === 'obstacle' && (conflict.obstacle.code === 'analyser-out-of-date' || isOfPlace(conflict));
}

/** A question to be asked once, which keeps nobody from the work. */
export function isOfPlace(conflict: Conflict): boolean {
  return conflict.code === 'obstacle' && conflict.obstacle.code === 'licence-elsewhere';
}

export type Papers = {
  /** The first of the days shown on which no analyser is in date; null: one is whenever a visit needs it. */
  readonly noAnalyserFromOn: string | null;
  /** Whose licence names other states or provinces than the sites do; null: nothing to ask. */
  readonly elsewhere: { readonly places: readonly string[]; readonly regions: readonly string[] } | null;
};

export function papersOf({
  technician,
  days,
}: {
  readonly technician: Pick<BoardRowModel['technician'], 'analysersDueOn'>;
  readonly days: readonly { readonly on: string; readonly blocks: readonly Pick<BoardBlock, 'conflicts'>[] }[];
}): Papers {
  const places = new Set<string>();
  const regions = new Set<string>();
  let lacksAnalyser = false;
  for (const { blocks } of days)
    for (const { conflicts } of blocks)
      for (const conflict of conflicts) {
        if (conflict.code !== 'obstacle') continue;
        const { obstacle } = conflict;
        if (obstacle.code === 'analyser-out-of-date') lacksAnalyser = true;
        if (obstacle.code !== 'licence-elsewhere') continue;
        for (const place of obstacle.places) places.add(place);
        regions.add(sitePlaceWords(obstacle));
      }
  const isInDate = (on: string) => technician.analysersDueOn.some((dueOn) => dueOn !== null && dueOn >= on);
  return {
    noAnalyserFromOn: lacksAnalyser ? (days.find(({ on }) => !isInDate(on))?.on ?? null) : null,
    elsewhere: regions.size === 0 ? null : { places: [...places], regions: [...regions] },
  };
}

/** `firstOn`: of the days shown; what holds for all of them names no day. */
export function noAnalyserWords(fromOn: string, firstOn: string | undefined): string {
  return fromOn === firstOn ? 'no analyser in date' : `no analyser in date from ${shortDayWords(fromOn)}`;
}

export function elsewhereWords({ places, regions }: NonNullable<Papers['elsewhere']>): string {
  return `licence is for ${places.join(' and ')}, work in ${regions.join(' and ')}: does it count there?`;
}

/** What stands in the place of the misfits when there are none. */
export function everyVisitFitsWords(papers: readonly Papers[]): string {
  const lacking = papers.filter(({ noAnalyserFromOn }) => noAnalyserFromOn !== null).length;
  const asked = papers.filter(({ elsewhere }) => elsewhere !== null).length;
  const but = [
    ...(lacking === 0 ? [] : [`${peopleWords(lacking)} without an analyser in date`]),
    ...(asked === 0 ? [] : [`${peopleWords(asked)} with a licence for another state or province`]),
  ];
  return but.length === 0 ? 'Every visit fits.' : `Every visit fits; ${but.join(', ')}.`;
}

function peopleWords(count: number): string {
  return count === 1 ? '1 person' : `${count} people`;
}
