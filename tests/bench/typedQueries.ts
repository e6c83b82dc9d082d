/** What people type into a search box, key by key: right, sloppy and wrong, the same at every run. */
import { seeded } from '../../assets/demo/generator/random.ts';
import { searchTerms } from '../../domain/text/foldForSearch.ts';
import { wordsOf } from '../support/manyAppliances.ts';

const TARGETS = 40;
const KEYS = 12;

/** Beginnings of 1 to 12 characters of serials, names, streets and phones of some appliances, and of words nobody has. */
export function typedQueries(appliances: number): readonly string[] {
  const random = seeded(20_260_302);
  const whole = Array.from({ length: TARGETS }, () => {
    const { name, phone, street, serial } = wordsOf(random.integer(0, appliances - 1));
    return [
      serial,
      sloppy(serial),
      name,
      street,
      phone,
      `${street} ${name}`,
      mistyped(serial),
      mistyped(name),
      'wqxzvwqxzvwq',
    ];
  }).flat();
  return whole.flatMap((text) => Array.from({ length: KEYS }, (_, index) => text.slice(0, index + 1)));
}

/** As read off a plate in bad light. */
function sloppy(serial: string): string {
  return serial.replaceAll('0', 'O').replaceAll('1', 'l').replaceAll('5', 's').replaceAll(/[- ]/g, '').toLowerCase();
}

/** Two letters changed places. */
function mistyped(text: string): string {
  return `${text.slice(0, 3)}${text[4] ?? ''}${text[3] ?? ''}${text.slice(5)}`;
}

/** The typed words alone, each somewhere: no beginnings, no look-alikes. */
export function bareMatchOf(query: string): string {
  return searchTerms(query)
    .map((term) => `"${term}"`)
    .join(' ');
}
