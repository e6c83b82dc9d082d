/** The sheet's altitude rule as a sentence, in the feet and percent that sheets print. */
import { assertNever } from '../../../../domain/result.ts';
import type { OpenRecord } from '../packetView.ts';

export function altitudeRuleText(rule: OpenRecord['sheet']['altitude']): string {
  switch (rule.method) {
    case 'not-on-sheet':
      return 'The sheet states no altitude rule.';
    case 'no-derate':
      return `No reduction with altitude (${rule.basis.source})`;
    case 'per-1000-ft':
      return `${rule.pct} % less for each 1000 ft ${
        rule.countedFrom === 'sea-level' ? `of altitude, once above ${rule.fromFt} ft` : `above ${rule.fromFt} ft`
      } (${rule.basis.source})`;
    case 'bands':
      return `${rule.bands.map((band) => `${band.fromFt} to ${band.toFt} ft: ${band.pct} % less`).join('; ')} (${rule.basis.source})`;
    default:
      return assertNever(rule);
  }
}
