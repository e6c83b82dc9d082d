/** Where an appliance stands and stood: moved, taken out of use, replaced by another. What was recorded of it stays. */
import { z } from 'zod';
import { day, id, line, nothing, operation, optionalLine } from './operation.ts';

const placed = ['dispatcher', 'owner', 'technician'] as const;

const place = z.strictObject({
  placementId: id,
  siteId: id,
  street: z.string(),
  city: z.string(),
  position: optionalLine,
  fromOn: day.nullable(),
  toOn: day.nullable(),
  endReason: optionalLine,
});
export type Place = z.output<typeof place>;

const other = z.strictObject({ applianceId: id, serial: z.string(), maker: z.string(), model: z.string() });

export const placementOperations = {
  'appliances.getPlaces': operation({
    access: 'signed-in',
    input: z.strictObject({ applianceId: id }),
    output: z.strictObject({
      /** The newest first; an open one is where it stands. */
      places: z.array(place),
      /** In whose place it came, and what came in its own. */
      replaces: other.nullable(),
      replacedBy: other.nullable(),
      /** Others that stand where it stands or stood last. */
      neighbours: z.array(other),
    }),
  }),
  /** It falls due for nothing and no notice is about it any more; its history stays. */
  'appliances.takeOut': operation({
    access: placed,
    input: z.strictObject({ applianceId: id, on: day, why: line, replacedById: id.nullable() }),
    output: nothing,
    errors: {
      'day-in-future': nothing,
      'not-standing': nothing,
      'replaced-by-itself': nothing,
      /** Booked or under way: they are cancelled or finished first. */
      'visits-ahead': z.strictObject({ days: z.array(day) }),
    },
  }),
  /** As if it had never been taken out. */
  'appliances.putBack': operation({
    access: placed,
    input: z.strictObject({ applianceId: id }),
    output: nothing,
    errors: { 'is-standing': nothing },
  }),
  'appliances.move': operation({
    access: placed,
    input: z.strictObject({ applianceId: id, siteId: id, position: optionalLine, on: day, why: line }),
    output: nothing,
    errors: {
      'day-in-future': nothing,
      'same-site': nothing,
      'visits-ahead': z.strictObject({ days: z.array(day) }),
    },
  }),
} as const;
