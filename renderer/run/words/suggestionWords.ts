/** A suggestion of the judgement as the question a colleague would ask. Where a new reading is needed, it says so instead. */
import type { Suggestion, SuggestionCode } from '../../../domain/judgement/finding.ts';

const QUESTIONS: Readonly<Record<SuggestionCode, string>> = {
  'o2-co2-swapped': 'O₂ and CO₂ swapped?',
  'analyser-on-other-fuel': 'Analyser set to another fuel?',
  'air-free-typed-as-measured': 'Air-free CO typed as measured?',
  'percent-not-ppm': 'CO typed in % instead of ppm?',
  'over-range-written-as-value': 'Analyser over its range? Then it is “>”',
  'ratio-mistyped': 'CO/CO₂ mistyped?',
  'decimal-point-missing': 'Decimal point missing?',
  'fahrenheit-in-celsius': '°F typed in a °C box?',
  'celsius-in-fahrenheit': '°C typed in a °F box?',
  'inches-as-mbar': 'Inches of water typed as mbar?',
  'mbar-as-inches': 'mbar typed as inches of water?',
  'psi-as-bar': 'psi typed as bar?',
  'bar-as-psi': 'bar typed as psi?',
  'absolute-not-gauge': 'Absolute pressure instead of gauge?',
  'static-dynamic-swapped': 'Static and dynamic swapped?',
  'power-unit': 'Another unit of power?',
  'dial-size': 'Another dial on the meter?',
  'heating-value-times-ten': 'Heating value ten times too big?',
  'digits-swapped': 'Two digits swapped?',
  'supply-return-swapped': 'Supply and return swapped?',
  'flue-below-return': 'Flue gas colder than the return: sensor, unit or box?',
  'read-before-steady': 'Read before it was steady?',
  'analyser-not-zeroed': 'Analyser not zeroed in clean air?',
  'instrument-out-of-date': 'Instrument out of date?',
  'high-low-swapped': 'High and low fire swapped?',
  'copied-readings': 'The same digits as elsewhere: copied?',
  'serial-confusable': 'Look-alike letters in the serial number?',
  'serial-elsewhere': 'This serial number is at another site',
  'day-month-swapped': 'Day and month swapped?',
  'wrong-year': 'Wrong year?',
  'clock-differs': 'Clock of laptop or instrument wrong?',
  'date-kinds-confused': 'Dates mixed up?',
  'feet-as-metres': 'Feet typed as metres?',
  'duplicate-party': 'Already on file?',
  'owner-is-builder': 'Is the owner really the builder?',
  'fields-swapped': 'Typed into each other’s boxes?',
  'blank-as-zero': 'Zero, or not measured?',
};

export function suggestionQuestion(code: SuggestionCode): string {
  return QUESTIONS[code];
}

/** Whether one key may take it: there is something to change and no new reading is asked for. */
export function mayTake(suggestion: Suggestion): boolean {
  return suggestion.changes.length > 0 && !suggestion.needsNewReading;
}

export function isSuggestionCode(code: string): code is SuggestionCode {
  return Object.hasOwn(QUESTIONS, code);
}
