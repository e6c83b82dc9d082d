/** What is said once of a person and not of each of their visits: it would hide the visits that really do not fit. */
import { hasInDate } from '../../domain/schedule/heldInstruments.ts';
import { isForbidding } from '../../domain/schedule/obstacles.ts';
import type { InstrumentKind } from '../../domain/vocabulary/people.ts';
import { INSTRUMENT_SHORT } from '../instruments/instrumentWords.ts';
import { shortDayWords } from '../kit/dayWords.ts';
import { sitePlaceWords } from '../kit/places.ts';
import type { BoardBlock, BoardRowModel } from './boardModel.ts';

type Lacking = { readonly kind: InstrumentKind; readonly fromOn: string };

export type Papers = {
  /** Each kind that visits need and that is not in date, with the first of the days shown on which it is not. */
  readonly lacking: readonly Lacking[];
  /** Whose licence names other states or provinces than the sites do; null: nothing to ask. */
  readonly elsewhere: { readonly places: readonly string[]; readonly regions: readonly string[] } | null;
};

export function papersOf({
  technician,
  days,
}: {
  readonly technician: Pick<BoardRowModel['technician'], 'instruments'>;
  readonly days: readonly { readonly on: string; readonly blocks: readonly Pick<BoardBlock, 'conflicts'>[] }[];
}): Papers {
  const places = new Set<string>();
  const regions = new Set<string>();
  const lacking = new Set<InstrumentKind>();
  for (const { blocks } of days)
    for (const { conflicts } of blocks)
      for (const conflict of conflicts) {
        if (conflict.code !== 'obstacle') continue;
        const { obstacle } = conflict;
        if (obstacle.code === 'no-instrument' && !isForbidding(obstacle)) lacking.add(obstacle.kind);
        if (obstacle.code !== 'licence-elsewhere') continue;
        for (const place of obstacle.places) places.add(place);
        regions.add(sitePlaceWords(obstacle));
      }
  return {
    lacking: [...lacking].sort().flatMap((kind) => {
      const first = days.find(({ on }) => !hasInDate(technician.instruments, kind, on));
      return first === undefined ? [] : [{ kind, fromOn: first.on }];
    }),
    elsewhere: regions.size === 0 ? null : { places: [...places], regions: [...regions] },
  };
}

/** `firstOn`: of the days shown; what holds for all of them names no day. */
export function lackingWords(lacking: readonly Lacking[], firstOn: string | undefined): string {
  return [...Map.groupBy(lacking, ({ fromOn }) => fromOn)]
    .map(([fromOn, kinds]) => {
      const what = `no ${kinds.map(({ kind }) => INSTRUMENT_SHORT[kind]).join(' or ')} in date`;
      return fromOn === firstOn ? what : `${what} from ${shortDayWords(fromOn)}`;
    })
    .join(', ');
}

export function elsewhereWords({ places, regions }: NonNullable<Papers['elsewhere']>): string {
  return `licence is for ${places.join(' and ')}, work in ${regions.join(' and ')}: does it count there?`;
}

/** What stands in the place of the misfits when there are none. */
export function everyVisitFitsWords(papers: readonly Papers[]): string {
  const lacking = papers.filter((one) => one.lacking.length > 0);
  const kinds = new Set(lacking.flatMap((one) => one.lacking.map(({ kind }) => kind)));
  const asked = papers.filter(({ elsewhere }) => elsewhere !== null).length;
  const but = [
    ...(lacking.length === 0 ? [] : [`${peopleWords(lacking.length)} without ${oneOf(kinds)} in date`]),
    ...(asked === 0 ? [] : [`${peopleWords(asked)} with a licence for another state or province`]),
  ];
  return but.length === 0 ? 'Every visit fits.' : `Every visit fits; ${but.join(', ')}.`;
}

function oneOf(kinds: ReadonlySet<InstrumentKind>): string {
  const [first, ...others] = [...kinds];
  if (first === undefined || others.length > 0) return 'an instrument';
  return `${first === 'analyser' ? 'an' : 'a'} ${INSTRUMENT_SHORT[first]}`;
}

function peopleWords(count: number): string {
  return count === 1 ? '1 person' : `${count} people`;
}
