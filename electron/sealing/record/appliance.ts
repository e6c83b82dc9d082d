/** The appliance as it stood, as sealed. */
import { z } from 'zod';
import { COVER_DATES } from '../../../domain/procedure/modelSheet.ts';
import { day, fuel, id, number, personal, words } from './fields.ts';

export const appliance = z.strictObject({
  applianceId: id,
  serial: words,
  maker: words,
  model: words,
  plateFuel: fuel.nullable(),
  tagFuel: fuel.nullable(),
  ratedInputKw: number,
  ratedInputBasis: z.enum(['gross', 'net']),
  position: words.nullable(),
  vent: z.strictObject({
    kind: words.nullable(),
    lengthM: number,
    elbows: number,
    isConcealed: z.boolean().nullable(),
  }),
  /** Kept apart, each with where it comes from and how exact it is. */
  dates: z.array(
    z.strictObject({
      kind: z.enum(COVER_DATES),
      on: day,
      precision: z.enum(['day', 'month', 'year']),
      source: words,
    }),
  ),
  fuelState: z
    .strictObject({
      fuel,
      fromOn: day,
      conversionKit: words.nullable(),
      orifice: words.nullable(),
      proof: personal,
    })
    .nullable(),
});
