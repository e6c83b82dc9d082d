/** A calendar day or an instant, month as a word, with the machine-readable form underneath. */
import { dayWords, instantWords } from './dayWords.ts';

export function DateText({ day, weekday = false }: { readonly day: string; readonly weekday?: boolean }) {
  return (
    <time dateTime={day} style={{ whiteSpace: 'nowrap' }}>
      {dayWords(day, { weekday })}
    </time>
  );
}

export function InstantText({ at }: { readonly at: string }) {
  return (
    <time dateTime={at} style={{ whiteSpace: 'nowrap' }}>
      {instantWords(at)}
    </time>
  );
}
