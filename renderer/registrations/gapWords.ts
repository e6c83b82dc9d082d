/** What a packet lacks, in words, and the screen where it is given. */
import { isQuantityKey, quantitySpec } from '../../domain/quantity/quantities.ts';
import type { PacketGap } from '../../electron/contract/registrations.ts';
import { COVER_DATE_WORDS } from '../kit/coverDates.ts';
import { keyOf } from '../kit/tradeWords.ts';

/** Codes as the packet's own list has them; tests/renderer/gapWords.test.ts holds the two against each other. */
const GAP_WORDS: Readonly<Record<string, string>> = {
  'not-sealed': 'The record is not signed and sealed yet',
  'owner-missing': 'Who the owner is',
  'owner-phone-missing': 'The owner’s phone',
  'owner-email-missing': 'The owner’s e-mail',
  'owner-address-missing': 'The owner’s postal address',
  'occupant-missing': 'Who lives there',
  'site-address-missing': 'The site’s address',
  'altitude-missing': 'The site’s altitude',
  'installer-missing': 'Who installed it (role “fitter” at the site)',
  'supplier-missing': 'Who supplied it (role “supplier” at the site)',
  'permit-missing': 'The permit number',
  'company-licence-missing': 'Your company’s licence number',
  'licence-missing': 'Licence number and class of the person in charge',
  'licence-not-valid': 'A licence valid on the day of the visit',
  'model-missing': 'The model',
  'serial-missing': 'The serial number',
  'fuel-missing': 'The fuel on the plate',
  'conversion-kit-missing': 'The conversion kit: the plate’s fuel is not the one burnt',
  'orifice-missing': 'The marking of the orifice: the plate’s fuel is not the one burnt',
  'rated-input-missing': 'The rated input',
  'vent-missing': 'The vent’s kind and material',
  'vent-length-missing': 'The vent’s length',
  'date-missing': 'A date',
  'combustion-missing': 'A combustion reading',
  'gas-pressure-missing': 'The gas inlet pressure',
  'clocked-input-missing': 'The meter timing, or why there is none',
  'system-pressure-missing': 'The cold system pressure',
  'water-quality-missing': 'Water quality',
  'water-treatment-missing': 'The water treatment, or that there was none',
  'safeties-missing': 'The safety devices proven',
  'controls-missing': 'The controls as they were set',
  'photo-missing': 'A photo',
  'photo-file-missing': 'The file of a photo on record',
  'handover-missing': 'The handover: who was told, or why nobody',
  'sign-off-missing': 'The signature of the licensed person',
  'make-safe-open': 'A make-safe on this appliance is still open',
  'amended-outside': 'A new reading: the amended one is outside its limit',
  'notice-open': 'A recall or stop-use notice is not settled',
  'instrument-missing': 'The analyser a flue reading was taken with',
  'calibration-missing': 'An instrument’s calibration date',
  'calibration-lapsed': 'An instrument in date on the day of the visit',
  'consent-missing': 'The owner’s consent to being registered',
  'service-proof-incomplete': 'Firm, licence or record of a service',
  'sheet-item-open': 'Asked for by the sheet',
};

export function gapWords({ code, detail }: PacketGap): string {
  const words = GAP_WORDS[code] ?? sentenceOf(code);
  return detail === null ? words : `${words}: ${detailWords(code, detail)}`;
}

export function hasGapWords(code: string): boolean {
  return Object.hasOwn(GAP_WORDS, code);
}

function detailWords(code: string, detail: string): string {
  const date = code === 'date-missing' ? keyOf(COVER_DATE_WORDS, detail) : null;
  if (date !== null) return COVER_DATE_WORDS[date];
  return isQuantityKey(detail) ? quantitySpec(detail).label : detail;
}

/** For a code newer than this list: readable, if not pretty. */
function sentenceOf(code: string): string {
  const plain = code.replaceAll('-', ' ');
  return plain.charAt(0).toUpperCase() + plain.slice(1);
}
