/** What rests on a house having changed hands. */
import type { TransferConsequence } from '../../domain/vocabulary/places.ts';

export function transferConsequenceWords(what: readonly TransferConsequence[]): string {
  return what.map((one) => WORDS[one]).join(', ');
}

const WORDS: Readonly<Record<TransferConsequence, string>> = {
  seals: 'a signed record that names the owner',
  agreements: 'a service agreement with the new owner',
  messages: 'a message to the new owner',
  notices: 'a notice to the maker',
  'sign-offs': 'a signature of the new owner',
  roles: 'a change in who is who here',
};
