/** All ways between the places of a week: from the firm's own table where it has the pair, else from the map, else assumed. */
import { describe, expect, it } from 'vitest';
import { travelFromCoordinates, travelFromTimes, UNKNOWN_WAY_MIN } from '../../../domain/schedule/travelMatrix.ts';
import { NO_TABLE, toTravelTable } from '../../../domain/schedule/travelTable.ts';
import { baseWayPlace, wayPlaceOf } from '../../../domain/schedule/wayPlace.ts';

const places = [
  { placeId: 'base', at: { latitude: 43, longitude: -79 } },
  { placeId: 'north', at: { latitude: 43.1, longitude: -79 } },
  { placeId: 'somewhere', at: null },
];
const SETTINGS = { roadFactor: 1.5, speedKmPerH: 60 };

describe('travelFromCoordinates', () => {
  it('gives whole minutes, none to where one is, and the stated assumption where the map is silent', () => {
    // A tenth of a degree of latitude is 11.12 km on a sphere of 6371 km: × 1.5 at 60 km/h is 16.68 minutes.
    expect(travelFromCoordinates(places, SETTINGS).minutes).toEqual([
      [0, 17, UNKNOWN_WAY_MIN],
      [17, 0, UNKNOWN_WAY_MIN],
      [UNKNOWN_WAY_MIN, UNKNOWN_WAY_MIN, 0],
    ]);
  });
});

describe('travelFromTimes', () => {
  const nowhere = { street: null, postcode: null, city: null, latitude: null, longitude: null };
  const ways = new Map([
    ['base', baseWayPlace('Tobias Reyle', nowhere, { ...nowhere, city: 'Graven Bay', latitude: 43, longitude: -79 })],
    [
      'north',
      wayPlaceOf({ street: '4 Mill Road', postcode: 'N1', city: 'Farrow Mills', latitude: 43.1, longitude: -79 }),
    ],
    ['somewhere', wayPlaceOf({ ...nowhere, street: '5 Mill Road', city: 'Farrow Mills' })],
  ]);
  const minutes = (pairs: Parameters<typeof toTravelTable>[0]) =>
    travelFromTimes(places, ways, { ...SETTINGS, table: toTravelTable(pairs) }).minutes;

  it('is the map without a table', () => {
    expect(travelFromTimes(places, ways, { ...SETTINGS, table: NO_TABLE })).toEqual(
      travelFromCoordinates(places, SETTINGS),
    );
  });

  it('takes one line for both ways, unless the way back has its own', () => {
    expect(minutes([{ from: 'graven bay', to: 'N1', minutes: 12 }])[1]?.[0]).toBe(12);
    const both = minutes([
      { from: 'Graven Bay', to: 'N1', minutes: 12 },
      { from: 'N1', to: 'Graven Bay', minutes: 19 },
    ]);
    expect([both[0]?.[1], both[1]?.[0]]).toEqual([12, 19]);
  });

  it('prefers the address to the postcode, the postcode to the town, and a person to their town', () => {
    const town = { from: 'Graven Bay', to: 'Farrow Mills', minutes: 40 };
    expect(minutes([town])[0]).toEqual([0, 40, 40]);
    expect(minutes([town, { from: 'Graven Bay', to: 'N1', minutes: 30 }])[0]).toEqual([0, 30, 40]);
    expect(minutes([town, { from: 'Graven Bay', to: '4 mill road, FARROW MILLS', minutes: 20 }])[0]).toEqual([
      0, 20, 40,
    ]);
    expect(minutes([town, { from: 'Tobias Reyle', to: 'Farrow Mills', minutes: 10 }])[0]).toEqual([0, 10, 10]);
  });

  it('takes a town’s line to itself between two of its addresses, and leaves what it does not have to the map', () => {
    expect(minutes([{ from: 'Farrow Mills', to: 'Farrow Mills', minutes: 6 }])).toEqual([
      [0, 17, UNKNOWN_WAY_MIN],
      [17, 0, 6],
      [UNKNOWN_WAY_MIN, 6, 0],
    ]);
  });
});
