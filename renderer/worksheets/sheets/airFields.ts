/** The altitude of the site, for the air pressure that comes with it on average. */
import { standardAtmosphere } from '../../../domain/gas/standardAtmosphere.ts';
import { ok } from '../../../domain/result.ts';
import { reading } from '../core/fields.ts';
import { type Worked, work } from '../core/worked.ts';

export const altitudeField = reading('altitudeM', {
  usual: '0',
  alsoCalled: ['elevationM'],
  help: 'Above sea level; for the mean air pressure there.',
});

export function airPressureKpaAbs(altitudeM: Worked<number>): Worked<number> {
  return work({ altitudeM }, (known) => {
    const air = standardAtmosphere({ elevationM: known.altitudeM });
    return air.ok ? ok(air.value.pressureKpaAbs) : air;
  });
}
