/** What sizing and checking a vessel both ask for. */
import { number, reading } from '../core/fields.ts';
import { TEMPERATURE, VOLUME } from '../core/measures.ts';
import { fluidFields } from './fluidFields.ts';
import { practiceField } from './practiceChoice.ts';

export const systemFields = {
  practice: practiceField,
  systemVolumeL: reading('systemVolumeL', { help: 'See the worksheet System volume.' }),
  ...fluidFields,
  coldC: number('Water cold, when filled', TEMPERATURE, [-20, 60], { usual: { metric: '10', us: '50' } }),
  hotC: number('Water at its hottest', TEMPERATURE, [0, 120], { usual: { metric: '80', us: '180' } }),
  reliefSettingBarG: reading('reliefSettingBarG', { usual: { metric: '3', us: '30' } }),
} as const;

export const vesselVolumeField = number('Vessel', VOLUME, [0.5, 100_000], { alsoCalled: ['vesselVolumeL'] });
