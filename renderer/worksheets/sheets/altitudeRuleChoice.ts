/** The altitude rules in common print. The maker's sheet wins over each of them. */
import { type AltitudeRule, CANADA_ALTITUDE_RULE, US_COMMON_ALTITUDE_RULE } from '../../../domain/gas/altitudeRule.ts';
import { choice } from '../core/fields.ts';

const WORDS = {
  'no-derate': 'none: the maker asks for no derate',
  'not-on-sheet': 'the maker’s rule is not known',
  'us-common': 'US: 4 % per 1000 ft from sea level, above 2000 ft',
  'us-threshold': 'US: 4 % per 1000 ft counted from 2000 ft',
  canada: 'Canada: 10 % from 2000 to 4500 ft',
} as const;

export type AltitudeRuleChoice = keyof typeof WORDS;

export const ALTITUDE_RULES: Readonly<Record<AltitudeRuleChoice, AltitudeRule>> = {
  'no-derate': { method: 'no-derate' },
  'not-on-sheet': { method: 'not-on-sheet' },
  'us-common': US_COMMON_ALTITUDE_RULE,
  'us-threshold': { method: 'per-1000-ft', pct: 4, fromFt: 2000, countedFrom: 'threshold' },
  canada: CANADA_ALTITUDE_RULE,
};

export const altitudeRuleField = choice('Altitude rule', WORDS, 'not-on-sheet', {
  help: 'As the maker’s sheet has it.',
});
