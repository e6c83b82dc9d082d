import { describe, expect, it } from 'vitest';
import type { PhotoFacts } from '../../../domain/photos/readPhotoFacts.ts';
import { takenInstant } from '../../../domain/photos/takenInstant.ts';

const FIRM = 'America/Halifax';

function taken(facts: Partial<PhotoFacts>) {
  return takenInstant(
    { takenLocal: '2026-03-02T10:00:00', offset: null, satelliteUtc: null, mayTellPlace: true, ...facts },
    FIRM,
  );
}

describe('takenInstant', () => {
  it('reads a clock without a zone in the firm’s, and proves nothing by that', () => {
    // Halifax keeps UTC−4 in winter.
    expect(taken({})).toEqual({ at: '2026-03-02T14:00:00.000Z', zoneBy: 'firm', isProven: false, satelliteDoubtS: 0 });
    expect(taken({ takenLocal: null })).toBeNull();
  });

  it('takes the zone from the satellites where the camera names none, whatever zone it is set to', () => {
    for (const [satelliteUtc, at] of [
      ['2026-03-02T14:00:03Z', '2026-03-02T14:00:00.000Z'],
      ['2026-03-02T15:00:03Z', '2026-03-02T15:00:00.000Z'],
      // India, +5:30.
      ['2026-03-02T04:29:50Z', '2026-03-02T04:30:00.000Z'],
      // Kiritimati, +14: still the day before in UTC.
      ['2026-03-01T20:00:10Z', '2026-03-01T20:00:00.000Z'],
    ] as const) {
      expect(taken({ satelliteUtc })).toEqual({ at, zoneBy: 'satellite', isProven: true, satelliteDoubtS: 0 });
    }
  });

  it('does not go by an old fix, nor by one that lies in no zone there is', () => {
    for (const satelliteUtc of ['2026-03-02T13:47:00Z', '2026-03-02T13:59:00Z', '2026-03-05T14:00:00Z'])
      expect(taken({ satelliteUtc })).toMatchObject({ zoneBy: 'firm', isProven: false, satelliteDoubtS: 0 });
  });

  it('proves a zone that the camera names, or says by how much it is off', () => {
    const at = '2026-03-02T14:00:00.000Z';
    expect(taken({ offset: '-04:00', satelliteUtc: '2026-03-02T14:00:20Z' })).toEqual({
      at,
      zoneBy: 'camera',
      isProven: true,
      satelliteDoubtS: 0,
    });
    // Set to the zone next door: it was an hour later than the camera says.
    expect(taken({ offset: '-04:00', satelliteUtc: '2026-03-02T15:00:00Z' })).toEqual({
      at,
      zoneBy: 'camera',
      isProven: false,
      satelliteDoubtS: 3600,
    });
  });
});
