/** All ways between the places of a week: from the map, or from a table of the firm's own. */
import { describe, expect, it } from 'vitest';
import { travelFromCoordinates, travelFromTable, UNKNOWN_WAY_MIN } from '../../../domain/schedule/travelMatrix.ts';

const places = [
  { placeId: 'base', at: { latitude: 43, longitude: -79 } },
  { placeId: 'north', at: { latitude: 43.1, longitude: -79 } },
  { placeId: 'somewhere', at: null },
];

describe('travelFromCoordinates', () => {
  it('gives whole minutes, none to where one is, and the stated assumption where the map is silent', () => {
    // A tenth of a degree of latitude is 11.12 km on a sphere of 6371 km: × 1.5 at 60 km/h is 16.68 minutes.
    expect(travelFromCoordinates(places, { roadFactor: 1.5, speedKmPerH: 60 }).minutes).toEqual([
      [0, 17, UNKNOWN_WAY_MIN],
      [17, 0, UNKNOWN_WAY_MIN],
      [UNKNOWN_WAY_MIN, UNKNOWN_WAY_MIN, 0],
    ]);
  });
});

describe('travelFromTable', () => {
  const table = (way: number) =>
    new Map([
      [
        'base',
        new Map([
          ['north', 12],
          ['somewhere', 30],
        ]),
      ],
      [
        'north',
        new Map([
          ['base', way],
          ['somewhere', 31],
        ]),
      ],
      [
        'somewhere',
        new Map([
          ['base', 29],
          ['north', 33],
        ]),
      ],
    ]);

  it('keeps each direction as given', () => {
    const found = travelFromTable(places, table(14));
    expect(found.ok && found.value.minutes).toEqual([
      [0, 12, 30],
      [14, 0, 31],
      [29, 33, 0],
    ]);
  });

  it('refuses a place that is missing and minutes that are not whole', () => {
    expect(travelFromTable(places, new Map())).toMatchObject({ error: { code: 'place-missing', placeId: 'base' } });
    for (const way of [1.5, -1, Number.NaN])
      expect(travelFromTable(places, table(way))).toMatchObject({ error: { code: 'not-whole-minutes' } });
  });
});
