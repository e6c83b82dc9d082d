/**
 * Everything a packet can lack, by code, with the words for it. A registration packet must hold what is listed here by
 * common practice of makers' registration desks; the sheet's own items come as `sheet-item-open`.
 */

import { isQuantityKey, quantitySpec } from '../../../domain/quantity/quantities.ts';
import type { PacketGap } from '../../contract/registrations.ts';
import { DATE_WORDS } from './packetWords.ts';
import { asWords } from './quantityText.ts';

type GapWords = { readonly where: PacketGap['where']; readonly words: string };

export const PACKET_GAPS = {
  'not-sealed': { where: 'visit', words: 'The record is not signed and sealed' },
  'owner-missing': { where: 'customer', words: 'Owner’s name' },
  'owner-phone-missing': { where: 'customer', words: 'Owner’s phone' },
  'owner-email-missing': { where: 'customer', words: 'Owner’s e-mail' },
  'owner-address-missing': { where: 'customer', words: 'Owner’s postal address' },
  'occupant-missing': { where: 'site', words: 'Occupant, where the owner may not live there' },
  'site-address-missing': { where: 'site', words: 'Site address' },
  'altitude-missing': { where: 'site', words: 'Altitude of the site' },
  'installer-missing': { where: 'site', words: 'Installer (firm or person)' },
  'supplier-missing': { where: 'site', words: 'Supplier or dealer' },
  'permit-missing': { where: 'site', words: 'Permit number' },
  'company-licence-missing': { where: 'registration', words: 'The firm’s own licence number' },
  'licence-missing': { where: 'staff', words: 'Licence number and class of the person in charge' },
  'licence-not-valid': { where: 'staff', words: 'A licence valid on the day of the visit' },
  'model-missing': { where: 'appliance', words: 'Model' },
  'serial-missing': { where: 'appliance', words: 'Serial number' },
  'fuel-missing': { where: 'appliance', words: 'Fuel on the rating plate' },
  'conversion-kit-missing': { where: 'appliance', words: 'Conversion kit: the plate’s fuel is not the fuel burnt' },
  'orifice-missing': { where: 'appliance', words: 'Marking of the orifice: the plate’s fuel is not the fuel burnt' },
  'rated-input-missing': { where: 'appliance', words: 'Rated input' },
  'vent-missing': { where: 'appliance', words: 'Vent material' },
  'vent-length-missing': { where: 'appliance', words: 'Vent length' },
  'date-missing': { where: 'appliance', words: 'Date' },
  'combustion-missing': { where: 'visit', words: 'Combustion reading' },
  'gas-pressure-missing': { where: 'visit', words: 'Gas inlet pressure' },
  'clocked-input-missing': { where: 'visit', words: 'Meter timing, or why there is none' },
  'system-pressure-missing': { where: 'visit', words: 'System pressure, cold' },
  'water-quality-missing': { where: 'visit', words: 'Water quality' },
  'water-treatment-missing': { where: 'visit', words: 'Water treatment, or that there was none' },
  'safeties-missing': { where: 'visit', words: 'Safety devices proved' },
  'controls-missing': { where: 'visit', words: 'Controls as set' },
  'photo-missing': { where: 'visit', words: 'Photo' },
  'photo-file-missing': { where: 'visit', words: 'The file of a recorded photo' },
  'handover-missing': { where: 'visit', words: 'Handover: who was told, or why nobody' },
  'sign-off-missing': { where: 'visit', words: 'Signature of the licensed person' },
  'amended-outside': { where: 'appliance', words: 'Read again: an amended reading is outside its limit' },
  'make-safe-open': { where: 'appliance', words: 'An isolation of this appliance is still open' },
  'notice-open': { where: 'appliance', words: 'A recall or stop-use notice nobody has settled' },
  'instrument-missing': { where: 'instrument', words: 'The analyser a flue reading was taken with' },
  'calibration-missing': { where: 'instrument', words: 'Calibration date' },
  'calibration-lapsed': { where: 'instrument', words: 'An instrument in date on the day of the visit' },
  'consent-missing': { where: 'registration', words: 'The owner’s consent to being registered' },
  'service-proof-incomplete': { where: 'registration', words: 'Firm, licence or record of a service' },
  'sheet-item-open': { where: 'visit', words: 'Asked for by the sheet' },
} as const satisfies Record<string, GapWords>;

export type GapCode = keyof typeof PACKET_GAPS;

export function gapText(gap: PacketGap): string {
  const words = Object.hasOwn(PACKET_GAPS, gap.code) ? PACKET_GAPS[gap.code as GapCode].words : asWords(gap.code);
  return gap.detail === null ? words : `${words}: ${detailText(gap)}`;
}

function detailText(gap: PacketGap): string {
  const detail = gap.detail ?? '';
  if (gap.code === 'date-missing' && Object.hasOwn(DATE_WORDS, detail)) {
    return DATE_WORDS[detail as keyof typeof DATE_WORDS].toLowerCase();
  }
  return isQuantityKey(detail) ? quantitySpec(detail).label : detail;
}
