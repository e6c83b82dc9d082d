/** At which temperature and pressure a volume of gas is stated. */
import { type ChoiceField, choice } from '../core/fields.ts';

const VOLUME_BASES = {
  'europe-15': '15 °C, 1013 mbar',
  'us-14-73': '60 °F, 14.73 psia',
  'us-14-696': '60 °F, 14.696 psia',
} as const;

export type VolumeBase = keyof typeof VOLUME_BASES;

export function volumeBaseField(label: string, extra: Pick<ChoiceField, 'onlyFor'> = {}): ChoiceField<VolumeBase> {
  return choice(label, VOLUME_BASES, { metric: 'europe-15', us: 'us-14-73' }, extra);
}
