/** Countries, time zones and the rule sets of the safety ceilings, as lists to choose from. */
import type { Option } from '../form/SelectField.tsx';

const A = 'A'.charCodeAt(0);

/** Every two-letter code this computer has a name for; no list of countries has to be kept up. */
export function countryOptions(): readonly Option[] {
  const names = new Intl.DisplayNames(['en'], { type: 'region', fallback: 'none' });
  const codes = Array.from({ length: 26 * 26 }, (_, index) =>
    String.fromCharCode(A + Math.floor(index / 26), A + (index % 26)),
  );
  return codes
    .flatMap((code) => {
      const name = NOT_COUNTRIES.includes(code) || isOldCode(code) ? undefined : names.of(code);
      return name === undefined ? [] : [{ value: code, label: name }];
    })
    .sort((a, b) => a.label.localeCompare(b.label));
}

/** A code given up for another one (DD for DE, UK for GB): it has the same name, and chosen it would be another country. */
function isOldCode(code: string): boolean {
  return new Intl.Locale(`und-${code}`).region !== code;
}

/** Codes with a name that are no country: unions, pseudo-locales, "unknown". */
const NOT_COUNTRIES = ['EU', 'EZ', 'UN', 'XA', 'XB', 'ZZ', 'QO'];

export function countryName(code: string): string {
  try {
    return new Intl.DisplayNames(['en'], { type: 'region' }).of(code) ?? code;
  } catch {
    return code;
  }
}

export function timeZoneNames(): readonly string[] {
  return Intl.supportedValuesOf('timeZone');
}

const RULE_SETS: readonly Option[] = [
  { value: 'north-america', label: 'North America' },
  { value: 'europe', label: 'Europe' },
];

/** The known rule sets, and the one on file when it is another. */
export function ruleSetOptions(onFile: string): readonly Option[] {
  return RULE_SETS.some(({ value }) => value === onFile) || onFile === ''
    ? RULE_SETS
    : [...RULE_SETS, { value: onFile, label: onFile }];
}

export const UNIT_SYSTEM_OPTIONS: readonly Option<'metric' | 'us'>[] = [
  { value: 'metric', label: '°C, bar, mbar, kW, L/min' },
  { value: 'us', label: '°F, psi, in w.c., Btu/h, US gpm' },
];

export const LANGUAGE_OPTIONS: readonly Option<'en' | 'fr' | 'es'>[] = [
  { value: 'en', label: 'English' },
  { value: 'fr', label: 'French' },
  { value: 'es', label: 'Spanish' },
];

/** As the office wrote its state or province; the country where nothing is written. */
export function sitePlaceWords({
  region,
  country,
}: {
  readonly region: string | null;
  readonly country: string | null;
}): string {
  return region ?? (country === null ? '' : countryName(country));
}
