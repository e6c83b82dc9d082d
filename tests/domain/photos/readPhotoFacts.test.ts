import { parse } from 'exifr';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { matchPhotos } from '../../../domain/photos/matchPhotos.ts';
import { readPhotoFacts } from '../../../domain/photos/readPhotoFacts.ts';
import { exifJpeg } from '../../support/exifJpeg.ts';
import { anItem, aStep, tinySheet } from '../../support/tinySheet.ts';

describe('readPhotoFacts', () => {
  it.each([true, false])('reads the time and the offset, in both byte orders (little-endian: %s)', (isLittle) => {
    const bytes = exifJpeg({ taken: '2026:03:02 11:40:05', offset: '-04:00', isLittle });
    expect(readPhotoFacts(bytes)).toEqual({
      takenLocal: '2026-03-02T11:40:05',
      offset: '-04:00',
      satelliteUtc: null,
      mayTellPlace: false,
    });
  });

  it('reads what exifr reads, a reader of its own', async () => {
    for (const isLittle of [true, false]) {
      const bytes = exifJpeg({
        taken: '2026:03:02 11:40:05',
        offset: '+02:00',
        hasGps: true,
        satellite: { day: '2026:03:02', time: [9, 40, 7] },
        isLittle,
      });
      const theirs = await parse(bytes, { gps: true, reviveValues: false });
      const ours = readPhotoFacts(bytes);
      expect(ours.takenLocal?.replaceAll('-', ':').replace('T', ' ')).toBe(theirs.DateTimeOriginal);
      expect(ours.offset).toBe(theirs.OffsetTimeOriginal);
      expect(ours.mayTellPlace).toBe(theirs.GPSLatitude !== undefined);
      const [hour, minute, second] = theirs.GPSTimeStamp as readonly number[];
      const [year, month, day] = String(theirs.GPSDateStamp).split(':').map(Number);
      const theirTime = Date.UTC(year ?? 0, (month ?? 0) - 1, day, hour, minute, second);
      expect(Date.parse(ours.satelliteUtc ?? '')).toBe(theirTime);
    }
  });

  it('takes no satellite time that never was, and none where only a place stands', () => {
    const at = (day: string, time: readonly [number, number, number]) =>
      readPhotoFacts(exifJpeg({ hasGps: true, satellite: { day, time } })).satelliteUtc;
    expect(at('2026:03:02', [9, 40, 7])).toBe('2026-03-02T09:40:07Z');
    expect(at('2026:13:02', [9, 40, 7])).toBeNull();
    expect(at('2026:03:02', [25, 0, 0])).toBeNull();
    expect(readPhotoFacts(exifJpeg({ hasGps: true })).satelliteUtc).toBeNull();
  });

  it('sees a GPS directory, and says nothing of a place where there is none', () => {
    expect(readPhotoFacts(exifJpeg({ taken: '2026:03:02 11:40:05', hasGps: true })).mayTellPlace).toBe(true);
    expect(readPhotoFacts(exifJpeg({})).mayTellPlace).toBe(false);
  });

  it.each(['0000:00:00 00:00:00', '2026:02:30 10:00:00', '2026:13:01 10:00:00', 'yesterday', '    :  :     :  :  '])(
    'takes %j for no time',
    (taken) => {
      expect(readPhotoFacts(exifJpeg({ taken })).takenLocal).toBeNull();
    },
  );

  it('never throws, and trusts no damaged file with a place', () => {
    const whole = exifJpeg({ taken: '2026:03:02 11:40:05', hasGps: true });
    fc.assert(
      fc.property(fc.nat({ max: whole.length - 1 }), fc.nat({ max: 255 }), (at, value) => {
        const damaged = whole.slice();
        damaged[at] = value;
        readPhotoFacts(damaged);
        readPhotoFacts(whole.subarray(0, at));
      }),
      { numRuns: 500 },
    );
    expect(readPhotoFacts(whole.subarray(0, 30)).mayTellPlace).toBe(true);
    expect(readPhotoFacts(new Uint8Array()).mayTellPlace).toBe(true);
  });
});

describe('matchPhotos', () => {
  const { startup } = tinySheet([
    aStep('arrival', [anItem('photo', 'plate'), anItem('confirm', 'seen')]),
    aStep('vent', [anItem('photo', 'outside'), anItem('photo', 'inside')]),
    aStep('end', [anItem('photo', 'all')]),
  ]);
  const visit = { startedAt: '2026-03-02T13:00:00Z', endedAt: '2026-03-02T16:00:00Z' };
  const marks = [
    { stepKey: 'arrival', at: '2026-03-02T13:05:00Z' },
    { stepKey: 'vent', at: '2026-03-02T13:40:00Z' },
    { stepKey: 'end', at: '2026-03-02T15:30:00Z' },
  ];
  const match = (photos: readonly [string, string | null][], taken: readonly string[] = []) =>
    matchPhotos({
      photos: photos.map(([photoId, takenAt]) => ({ photoId, takenAt })),
      places: startup.flatMap(({ key, items }) =>
        items.flatMap((item) =>
          item.kind === 'photo' && !taken.includes(item.key) ? [{ stepKey: key, itemKey: item.key }] : [],
        ),
      ),
      stepKeys: startup.map(({ key }) => key),
      marks,
      visit,
    });

  it('finds the step that was worked on, and goes on in the sheet’s order', () => {
    const found = match([
      ['b', '2026-03-02T13:50:00Z'],
      ['a', '2026-03-02T13:06:00Z'],
      ['c', '2026-03-02T13:55:00Z'],
    ]);
    expect(found.map(({ photoId, place, when }) => [photoId, place?.itemKey, when])).toEqual([
      ['b', 'outside', 'during'],
      ['a', 'plate', 'during'],
      ['c', 'inside', 'during'],
    ]);
  });

  it('warns of a clock that does not fit, says by how much, and goes by the order alone', () => {
    const found = match([
      ['a', '2026-03-01T13:06:00Z'],
      ['b', '2026-03-01T13:50:00Z'],
    ]);
    expect(found.map(({ place, when }) => [place?.itemKey, when])).toEqual([
      ['plate', 'outside'],
      ['outside', 'outside'],
    ]);
    // 23 hours and 54 minutes before the visit.
    expect(found[0]?.awayS).toBe(-(23 * 60 + 54) * 60);
  });

  it('does not let a wrong clock take the place of a right one', () => {
    const found = match([
      ['wrong', '2026-03-02T08:00:00Z'],
      ['right', '2026-03-02T13:06:00Z'],
      ['timeless', null],
    ]);
    expect(found.map(({ place, when }) => [place?.itemKey, when])).toEqual([
      ['inside', 'outside'],
      ['plate', 'during'],
      ['outside', 'unknown'],
    ]);
  });

  it('warns of a time when nobody was at work, as between the trips of a run that was broken off', () => {
    const later = { startedAt: visit.startedAt, endedAt: '2026-03-05T16:00:00Z' };
    const [between] = matchPhotos({
      photos: [{ photoId: 'a', takenAt: '2026-03-03T13:00:00Z' }],
      places: [{ stepKey: 'vent', itemKey: 'outside' }],
      stepKeys: ['arrival', 'vent', 'end'],
      marks,
      visit: later,
    });
    // 21 hours and 30 minutes after the last thing that was recorded.
    expect(between).toMatchObject({ when: 'idle', awayS: (21 * 60 + 30) * 60 });
  });

  it('goes by the order alone where the clock is doubted', () => {
    const [doubted] = matchPhotos({
      photos: [{ photoId: 'a', takenAt: '2026-03-02T15:35:00Z', isDoubted: true }],
      places: [{ stepKey: 'arrival', itemKey: 'plate' }],
      stepKeys: ['arrival', 'vent', 'end'],
      marks,
      visit,
    });
    expect(doubted).toMatchObject({ when: 'doubted', place: { itemKey: 'plate' } });
  });

  it('puts nothing where something is already, and nothing anywhere when all is there', () => {
    expect(match([['a', '2026-03-02T13:06:00Z']], ['plate'])[0]?.place?.itemKey).toBe('outside');
    expect(match([['a', null]], ['plate', 'outside', 'inside', 'all'])[0]).toMatchObject({
      place: null,
      when: 'unknown',
    });
  });
});
