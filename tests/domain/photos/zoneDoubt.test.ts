import { describe, expect, it } from 'vitest';
import { zoneDoubtS } from '../../../domain/photos/zoneDoubt.ts';

/** Zones: Halifax is UTC−4 in winter, Regina UTC−6, Toronto UTC−5 (IANA time zone database). */
const HALIFAX = { takenAt: '2026-03-02T14:00:00.000Z', readIn: 'America/Halifax', siteZone: 'America/Halifax' };

describe('zoneDoubtS', () => {
  it('has nothing against a file that was written with the picture', () => {
    expect(zoneDoubtS({ ...HALIFAX, fileAt: '2026-03-02T14:00:03.000Z' })).toBe(0);
  });

  it('notices a file that was written whole hours away: the camera keeps another zone', () => {
    expect(zoneDoubtS({ ...HALIFAX, fileAt: '2026-03-02T15:00:04.000Z' })).toBe(3600);
    // Newfoundland is half an hour off.
    expect(zoneDoubtS({ ...HALIFAX, fileAt: '2026-03-02T13:30:00.000Z' })).toBe(-1800);
  });

  it('takes a file copied at some other time for what it is', () => {
    expect(zoneDoubtS({ ...HALIFAX, fileAt: '2026-03-02T17:41:12.000Z' })).toBe(0);
    expect(zoneDoubtS({ ...HALIFAX, fileAt: '2026-03-05T14:00:00.000Z' })).toBe(0);
    expect(zoneDoubtS({ ...HALIFAX, fileAt: null })).toBe(0);
  });

  it('doubts the firm’s time at a site that keeps another', () => {
    expect(zoneDoubtS({ ...HALIFAX, siteZone: 'America/Regina', fileAt: null })).toBe(2 * 3600);
    // Same offset under another name.
    expect(zoneDoubtS({ ...HALIFAX, siteZone: 'Atlantic/Bermuda', fileAt: null })).toBe(0);
  });
});
