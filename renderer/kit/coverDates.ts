/** The dates cover can count from, in their natural order, each with what it is. */
import type { CoverDate } from '../../domain/procedure/modelSheet.ts';

export const COVER_DATE_WORDS: Readonly<Record<CoverDate, string>> = {
  made: 'made',
  sold: 'sold',
  installed: 'installed',
  started: 'started up',
  occupied: 'moved in',
  'title-transfer': 'title transferred',
};

export const COVER_DATE_HINTS: Readonly<Record<CoverDate, string>> = {
  made: 'from the plate; a month is enough',
  sold: 'invoice of the dealer',
  installed: 'the fitter’s own date',
  started: 'first startup, usually set by the startup itself',
  occupied: 'when somebody first lived there',
  'title-transfer': 'new builds: when the house was handed over',
};
