import ICAL from 'ical.js';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Office, setUpOffice } from '../../support/officeScenario.ts';
import { readPdf } from '../../support/readPdf.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';

/** Two days before the clocks of Halifax go forward (8 March 2026), and the Monday after: UTC−4, then UTC−3. */
const FRIDAY = '2026-03-06';
const MONDAY = '2026-03-09';

describe('what leaves the board', () => {
  let test: TestCore;
  let office: Office;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
  });
  afterEach(() => test.remove());

  const book = async (plannedOn: string, kind: 'startup' | 'service', isPencilled: boolean): Promise<string> => {
    const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind, note: null });
    const { visitId } = await test.must('visits.book', {
      jobIds: [jobId],
      plannedOn,
      plannedFrom: '09:00',
      plannedTo: '10:00',
      startMin: 570,
      durationMin: 90,
      crew: [{ staffId: office.technicianId, role: 'licensed' }],
      isPencilled,
      isPromised: true,
      note: 'Ring twice; łódka',
    });
    return visitId;
  };
  const readCalendar = async () => {
    const { text } = await test.must('calendars.export', {
      staffId: office.technicianId,
      from: '2026-03-01',
      to: '2026-03-31',
    });
    const calendar = new ICAL.Component(ICAL.parse(text) as never);
    const property = (event: ICAL.Component, name: string) => String(event.getFirstPropertyValue(name));
    return calendar.getAllSubcomponents('vevent').map((event) => ({
      uid: property(event, 'uid'),
      sequence: Number(property(event, 'sequence')),
      start: property(event, 'dtstart'),
      end: property(event, 'dtend'),
      status: property(event, 'status'),
      summary: property(event, 'summary'),
      location: property(event, 'location'),
    }));
  };

  it('writes a calendar that another program reads: UTC over the change of clocks, same identity, growing sequence', async () => {
    const friday = await book(FRIDAY, 'service', false);
    const monday = await book(MONDAY, 'startup', true);
    const before = await readCalendar();
    expect(before).toMatchObject([
      { start: '2026-03-06T13:30:00Z', end: '2026-03-06T15:00:00Z', status: 'CONFIRMED', sequence: 0 },
      { start: '2026-03-09T12:30:00Z', end: '2026-03-09T14:00:00Z', status: 'TENTATIVE', sequence: 0 },
    ]);
    expect(before[0]?.summary).toBe('Annual service T 24: Lowri Kestrel');
    expect(before[0]?.location).toBe('9 Fathom Street, Graven Bay');
    await test.must('visits.place', {
      visitId: friday,
      baseRevision: 0,
      plannedOn: FRIDAY,
      startMin: 840,
      durationMin: 90,
      moveCrew: null,
    });
    await test.must('visits.cancel', { visitId: monday, reason: 'site closed' });
    const after = await readCalendar();
    expect(after.map(({ uid }) => uid)).toEqual(before.map(({ uid }) => uid));
    expect(after).toMatchObject([
      { start: '2026-03-06T18:00:00Z', sequence: 1, status: 'CONFIRMED' },
      { sequence: 1, status: 'CANCELLED' },
    ]);
  });

  it('prints the day of a technician with everything that is open, and the week', async () => {
    await book(FRIDAY, 'startup', true);
    await test.must('makeSafes.open', { applianceId: office.applianceId, visitId: null, what: 'CO above the limit' });
    const sheet = await test.must('daySheets.build', { staffId: office.technicianId, on: FRIDAY });
    expect(sheet.visitCount).toBe(1);
    const read = async (attachmentId: string) => {
      const file = await test.core.getFile(attachmentId, 'test-window');
      if (file === null) throw new Error('no such file');
      return readPdf(file.bytes);
    };
    const day = await read(sheet.attachmentId);
    const text = day.pages.join(' ').replaceAll(/\s+/g, ' ');
    for (const part of [
      'Tobias Reyle, Friday 6 March 2026',
      '09:30–11:00: Lowri Kestrel',
      '9 Fathom Street, B4T 1A6 Graven Bay',
      'side door',
      'TK204417',
      'CO above the limit',
      'Pencilled in',
      'Permanent power at the boiler',
      'Ring twice; łódka',
      '09:00–10:00',
    ])
      expect(text).toContain(part);
    expect(day.isMarked).toBe(true);
    const { attachmentId } = await test.must('weekOverviews.build', { from: '2026-03-02' });
    const week = (await read(attachmentId)).pages.join(' ').replaceAll(/\s+/g, ' ');
    expect(week).toContain('Friday 6 March 2026');
    expect(week).toContain('Lowri Kestrel');
  });
});
