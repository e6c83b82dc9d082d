/** Each kind of doubt about the times of the pictures, in words. How far each picture is off stands at its own line. */
import type { PhotoTime } from './clockWords.ts';

export type ClockDoubt = { readonly title: string; readonly words: string };

export function clockDoubts(rows: readonly Pick<PhotoTime, 'when'>[]): readonly ClockDoubt[] {
  const count = (kind: PhotoTime['when']): number => rows.filter(({ when }) => when === kind).length;
  return KINDS.flatMap(({ kind, title, one, several }) => {
    const pictures = count(kind);
    if (pictures === 0) return [];
    return [
      {
        title,
        words: pictures === 1 ? `One picture ${one} ${ONE_BY_ORDER}` : `${pictures} pictures ${several} ${BY_ORDER}`,
      },
    ];
  });
}

const ONE_BY_ORDER = 'It is matched by its order only: look at it before it is put in place.';
const BY_ORDER = 'They are matched by their order only: look at each before it is put in place.';

const KINDS: readonly {
  readonly kind: PhotoTime['when'];
  readonly title: string;
  readonly one: string;
  readonly several: string;
}[] = [
  {
    kind: 'outside',
    title: 'The camera’s clock does not fit this visit',
    one: 'was not taken during this visit, by its own clock.',
    several: 'were not taken during this visit, by their own clock.',
  },
  {
    kind: 'idle',
    title: 'Taken when nobody was at work on this run',
    one: 'lies hours away from anything that was recorded.',
    several: 'lie hours away from anything that was recorded.',
  },
  {
    kind: 'doubted',
    title: 'The camera may be set to another time zone',
    one: 'has a time that may be another zone’s than the site’s.',
    several: 'have times that may be another zone’s than the site’s.',
  },
];
