/** What is on file about a person, and what speaks against erasing it, in words. */
import type { OutputOf } from '../../electron/contract/index.ts';

type Look = OutputOf<'persons.look'>;

/** `visits 2, messages 1, readings 40`: the words are those of the tables, which know no singular. */
export function heldWords({ held, fileCount }: Look): string {
  const parts = held
    .filter(({ what }) => what !== 'person' && what !== 'customer')
    .map(({ what, count }) => `${what.replaceAll('_', ' ')} ${count}`);
  return [...parts, `files ${fileCount}`].join(', ');
}

export function holdWords(what: Look['holds'][number]['what'], count: number): string {
  return HOLDS[what](count);
}

const HOLDS: { readonly [H in Look['holds'][number]['what']]: (count: number) => string } = {
  'make-safe-open': (count) =>
    `${count === 1 ? 'A make-safe is' : `${count} make-safes are`} open there: somebody may still have to be warned.`,
  'cover-may-run': (count) =>
    `${count === 1 ? 'An appliance stands' : `${count} appliances stand`} there and may still be covered: without an owner on file a maker may refuse a claim, and nobody can be told of a recall.`,
  'claim-open': (count) => `${count === 1 ? 'A claim is' : `${count} claims are`} open.`,
  'registration-open': (count) =>
    `${count === 1 ? 'A registration is' : `${count} registrations are`} not confirmed by the maker yet.`,
  'agreement-runs': (count) =>
    `${count === 1 ? 'A service agreement' : `${count} service agreements`} with them still runs.`,
  'visit-ahead': (count) => `${count === 1 ? 'A visit is' : `${count} visits are`} booked or under way there.`,
  'record-not-sealed': (count) =>
    `${count === 1 ? 'A record is' : `${count} records are`} not sealed yet and would be sealed without the name.`,
};
