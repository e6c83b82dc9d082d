import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readPhotoFacts } from '../../../domain/photos/readPhotoFacts.ts';
import { verifyFile } from '../../../electron/documents/verify/verifyFile.ts';
import { exifJpeg } from '../../support/exifJpeg.ts';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { type BookedRun, bookAndBegin } from '../../support/wholeJob.ts';

/** One run; the cases build on each other. */
describe('photos from a camera', () => {
  let test: TestCore;
  let office: Office;
  let run: BookedRun;
  const withPlace = exifJpeg({ taken: '2026:03:02 09:10:00', hasGps: true });
  beforeAll(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    run = await bookAndBegin(test, office);
  });
  afterAll(() => test.remove());

  const put = async (bytes: Uint8Array, fileName: string) => {
    const reply = await test.core.putFile(
      { bytes, mediaType: 'image/jpeg', fileName, takenAt: test.now() },
      'test-window',
    );
    return reply.ok ? reply.attachmentId : reply.code;
  };

  it('refuses a picture in HEIC, whatever it calls itself', async () => {
    // ISO base media file: box length, "ftyp", brand "heic".
    const heic = new Uint8Array([0, 0, 0, 24, ...new TextEncoder().encode('ftypheic'), 0, 0, 0, 0]);
    expect(await put(heic, 'plate.jpg')).toBe('type-refused');
  });

  it('takes the camera’s time before the file’s, and finds the step by it', async () => {
    const attachmentId = await put(withPlace, 'DSC_0001.JPG');
    const early = await put(exifJpeg({ taken: '2026:03:01 09:10:00', offset: '+01:00' }), 'DSC_0002.JPG');
    const matched = await test.must('photos.match', {
      visitId: run.visitId,
      runId: run.runId,
      attachmentIds: [attachmentId, early],
    });
    // 09:10 in Halifax is 13:10 UTC on that day; the visit began at 13:00.
    expect(matched[0]).toMatchObject({ takenAt: '2026-03-02T13:10:00.000Z', isFromCamera: true, when: 'during' });
    expect(matched[0]?.place).not.toBeNull();
    expect(matched[1]).toMatchObject({ takenAt: '2026-03-01T08:10:00.000Z', when: 'outside' });
  });

  it('says in which zone a clock was read that names none, and doubts it where the file was written hours away', async () => {
    const stated = await put(exifJpeg({ taken: '2026:03:02 09:10:00', offset: '-04:00' }), 'DSC_0004.JPG');
    const guessed = await put(exifJpeg({ taken: '2026:03:02 09:11:00' }), 'DSC_0005.JPG');
    const wrong = await put(exifJpeg({ taken: '2026:03:02 09:12:00' }), 'DSC_0006.JPG');
    const matched = await test.must('photos.match', {
      visitId: run.visitId,
      runId: run.runId,
      attachmentIds: [stated, guessed, wrong],
      fileTimes: { [guessed]: '2026-03-02T13:11:02.000Z', [wrong]: '2026-03-02T14:12:03.000Z' },
    });
    expect(matched[0]).toMatchObject({ readIn: null, doubtS: 0, when: 'during' });
    expect(matched[1]).toMatchObject({ readIn: 'America/Halifax', doubtS: 0, when: 'during' });
    // Written an hour later than the picture says: the camera is not set to Halifax.
    expect(matched[2]).toMatchObject({ readIn: 'America/Halifax', doubtS: 3600, when: 'doubted' });
  });

  it('goes by the satellites’ time where it settles the zone, though both readings lie within the visit', async () => {
    test.wait(4 * 3600);
    const satellite = { day: '2026:03:02', time: [15, 20, 1] } as const;
    const elsewhere = await put(exifJpeg({ taken: '2026:03:02 10:20:00', hasGps: true, satellite }), 'DSC_0007.JPG');
    const contradicted = await put(
      exifJpeg({ taken: '2026:03:02 10:20:00', offset: '-04:00', hasGps: true, satellite }),
      'DSC_0008.JPG',
    );
    const matched = await test.must('photos.match', {
      visitId: run.visitId,
      runId: run.runId,
      attachmentIds: [elsewhere, contradicted],
    });
    // 10:20 in Halifax would be 14:20 UTC, within the visit as well: only the satellites tell.
    expect(matched[0]).toMatchObject({
      takenAt: '2026-03-02T15:20:00.000Z',
      readIn: null,
      isProven: true,
      doubtS: 0,
    });
    expect(matched[1]).toMatchObject({
      takenAt: '2026-03-02T14:20:00.000Z',
      isProven: false,
      doubtS: 3600,
      when: 'doubted',
    });
  });

  it('keeps the original as it is and hands out a copy that says nothing of a place', async () => {
    const attachmentId = await put(withPlace, 'DSC_0003.JPG');
    const stored = await test.core.getFile(attachmentId, 'test-window');
    expect(Buffer.from(stored?.bytes ?? []).equals(Buffer.from(withPlace))).toBe(true);
    const { sheet } = await test.must('visits.getRun', { visitId: run.visitId, runId: run.runId });
    const step = sheet.startup.find(
      (one) => one.needsClear === null && one.after.length === 0 && one.items.some(({ kind }) => kind === 'photo'),
    );
    const item = step?.items.find(({ kind }) => kind === 'photo');
    if (step === undefined || item === undefined) throw new Error('no photo asked for');
    const at = { visitId: run.visitId, runId: run.runId, stepKey: step.key };
    await test.must('visits.openStep', at);
    await test.must('visits.attachPhoto', { ...at, itemKey: item.key, attachmentId });
    const { record } = await test.must('visits.getRun', { visitId: run.visitId, runId: run.runId });
    expect(record.photos[0]?.copySha256).toMatch(/^[0-9a-f]{64}$/);
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    const { packetZipId } = await test.must('packets.build', { runId: run.runId, isDraft: true, gapReason: null });
    const zip = (await test.core.getFile(packetZipId, 'test-window'))?.bytes ?? new Uint8Array();
    const photos = Object.entries(unzipSync(zip)).filter(([name]) => name.startsWith('photos/'));
    expect(photos).toHaveLength(1);
    expect(photos.map(([, bytes]) => readPhotoFacts(bytes).mayTellPlace)).toEqual([false]);
    expect(readPhotoFacts(withPlace).mayTellPlace).toBe(true);
    expect(verifyFile(zip)).toMatchObject({ isIntact: true, problems: [] });
  });

  it('keeps one small picture beside a photo, of a photo only, and nothing that is no picture', async () => {
    const photo = await put(withPlace, 'DSC_0100.JPG');
    const small = (attachmentId: string) => test.must('photos.findSmall', { attachmentId });
    const keep = (attachmentId: string, bytes: Uint8Array) =>
      test.ask('photos.keepSmall', { attachmentId, jpegBase64: Buffer.from(bytes).toString('base64') });
    expect(await small(photo)).toEqual({ smallId: null });
    expect(await keep(photo, new TextEncoder().encode('<svg/>'))).toMatchObject({ error: { code: 'no-photo' } });
    const jpeg = exifJpeg({ taken: '2026:03:02 09:10:00' });
    expect(await keep(photo, jpeg)).toMatchObject({ ok: true });
    const { smallId } = await small(photo);
    expect((await test.core.getFile(smallId ?? '', 'test-window'))?.bytes.length).toBe(jpeg.length);
    // The original is what it was, and a second one says nothing.
    expect((await test.core.getFile(photo, 'test-window'))?.bytes.length).toBe(withPlace.length);
    expect(await keep(photo, withPlace)).toMatchObject({ ok: true });
    expect(await small(photo)).toEqual({ smallId });
    const table = await test.core.putFile(
      { bytes: new TextEncoder().encode('a,b'), mediaType: 'text/csv', fileName: 'a.csv', takenAt: null },
      'test-window',
    );
    expect(await keep(table.ok ? table.attachmentId : '', jpeg)).toMatchObject({ error: { code: 'no-photo' } });
    expect(await keep('019caeb0-0000-7000-8000-000000000000', jpeg)).toMatchObject({ error: { code: 'not-found' } });
  });
});
