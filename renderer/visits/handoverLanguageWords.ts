/** The language the handover sheet speaks by itself, with whose it is: one line of a list to choose from. */
import type { OutputOf } from '../../electron/contract/index.ts';
import { LANGUAGE_WORDS } from '../messages/messageWords.ts';

export function handoverLanguageWords({ language, of, name }: OutputOf<'handovers.getLanguage'>): string {
  const spoken = LANGUAGE_WORDS[language];
  return of === 'company' ? `${spoken} (nobody’s language is on file)` : `${spoken} (${name}, ${of})`;
}
