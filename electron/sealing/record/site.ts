/** The site and its gas, as sealed. */
import { z } from 'zod';
import { EMITTERS } from '../../../domain/procedure/modelSheet.ts';
import { day, fuel, id, number, personal, words } from './fields.ts';

export const site = z.strictObject({
  siteId: id,
  label: personal,
  street: personal,
  postcode: personal,
  city: personal,
  region: words.nullable(),
  country: words,
  /** Decides which safety ceilings and which relief rule applied. */
  jurisdiction: words,
  timeZone: words,
  buildingKind: z.enum(['home', 'rental', 'new-build', 'commercial']),
  altitudeM: number,
  systemHeightM: number,
  systemVolumeL: number,
  systemVolumeHow: z.enum(['metered', 'estimated']).nullable(),
  coldWaterC: number,
  glycolKind: z.enum(['propylene', 'ethylene']).nullable(),
  emitters: z.array(z.strictObject({ emitter: z.enum(EMITTERS), ratedKw: number })),
});

export const gasSupply = z.strictObject({
  kind: z.enum(['meter', 'tank']),
  fuel,
  number: words.nullable(),
  dialM3: number,
  compensation: z.enum(['none', 'temperature', 'temperature-pressure']).nullable(),
  capacityM3PerH: number,
  regulator: words.nullable(),
  nominalMbarG: number,
  tankVolumeL: number,
  heatingValueMjPerM3: number,
  heatingValueTyped: words.nullable(),
  heatingValueSource: words.nullable(),
  heatingValueOn: day.nullable(),
  loads: z.array(z.strictObject({ name: words, inputKw: number })),
});
