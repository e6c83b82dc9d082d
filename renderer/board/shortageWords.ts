/** Two people and one analyser: said of the day, since neither of their visits is wrong by itself. */
import type { Shortage } from '../../domain/schedule/sharedInstruments.ts';
import { INSTRUMENT_SHORT } from '../instruments/instrumentWords.ts';
import { dayWords } from '../kit/dayWords.ts';

export function shortageWords({ on, kind, staffIds, inDate }: Shortage, nameOf: (staffId: string) => string): string {
  const names = staffIds.map(nameOf);
  const who = `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;
  return `${dayWords(on, { weekday: true })}: ${who} have ${inDate === 1 ? 'one' : inDate} ${INSTRUMENT_SHORT[kind]} in date between them`;
}
