import fc from 'fast-check';
import { DateTime } from 'luxon';
import { it } from 'vitest';
import { dayAt } from '../../../domain/coverage/dayAt.ts';

/** Offsets from −11 to +14, half and quarter hours, both hemispheres' summer times, and one that turns with the moon. */
const ZONES = [
  'UTC',
  'America/Halifax',
  'America/St_Johns',
  'Europe/London',
  'Asia/Kathmandu',
  'Australia/Lord_Howe',
  'Pacific/Auckland',
  'Pacific/Kiritimati',
  'Pacific/Pago_Pago',
  'Africa/Casablanca',
];

it('agrees with the reference date library luxon on the day of any instant: 10 000 random cases', () => {
  const instants = fc.date({ min: new Date('2012-01-02'), max: new Date('2060-12-30'), noInvalidDate: true });
  fc.assert(
    fc.property(fc.constantFrom(...ZONES), instants, (zone, at) => {
      return dayAt(zone, at.toISOString()) === DateTime.fromJSDate(at, { zone }).toISODate();
    }),
    { numRuns: 10_000 },
  );
});
