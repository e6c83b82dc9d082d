/** Matches photos to the steps of a run by when they were taken. */
import { findAttachment, findSmallPicture, SMALL_PICTURE } from '../../db/attachments.ts';
import { findCompany } from '../../db/people.ts';
import { matchPhotos } from '../../domain/photos/matchPhotos.ts';
import { readPhotoFacts } from '../../domain/photos/readPhotoFacts.ts';
import { takenInstant } from '../../domain/photos/takenInstant.ts';
import { zoneDoubtS } from '../../domain/photos/zoneDoubt.ts';
import type { RunRecord } from '../../domain/procedure/runRecord.ts';
import { fail, type Handlers, notFound } from './handler.ts';
import { keepMade } from './keepMade.ts';
import { readRunState, stepsOf } from './runState.ts';
import { sniffMediaType } from './sniffMediaType.ts';

export const photoHandlers: Handlers<'photos.match' | 'photos.findSmall' | 'photos.keepSmall'> = {
  'photos.findSmall': (input, context) => ({ smallId: findSmallPicture(context.db, input.attachmentId) ?? null }),

  'photos.keepSmall': (input, context) => {
    const photo = findAttachment(context.db, input.attachmentId);
    if (photo === undefined || photo.erasedAt !== null) return notFound('attachments', input.attachmentId);
    const bytes = Buffer.from(input.jpegBase64, 'base64');
    if (!photo.mediaType.startsWith('image/') || sniffMediaType(bytes) !== 'image/jpeg') return fail('no-photo', {});
    if (findSmallPicture(context.db, photo.id) !== undefined) return {};
    keepMade(context, {
      bytes,
      mediaType: 'image/jpeg',
      fileName: photo.fileName,
      subject: SMALL_PICTURE,
      derivedFromId: photo.id,
      takenAt: photo.takenAt,
    });
    return {};
  },

  'photos.match': (input, context) => {
    const state = readRunState(context.db, input.runId, input.visitId, context.now);
    const firmZone = findCompany(context.db)?.timeZone ?? 'UTC';
    const photos = input.attachmentIds.map((attachmentId) => {
      const row = findAttachment(context.db, attachmentId) ?? notFound('attachments', attachmentId);
      const bytes = row.exifAt === null ? null : context.services.attachments.get(row.sha256);
      // The zone is no part of what is stored: the original still says it, or does not.
      const read = bytes === null ? null : takenInstant(readPhotoFacts(bytes), firmZone);
      const readIn = read?.zoneBy === 'firm' ? firmZone : null;
      const isProven = read?.isProven === true && read.at === row.takenAt;
      const doubtS =
        readIn === null || row.takenAt === null
          ? (read?.satelliteDoubtS ?? 0)
          : zoneDoubtS({
              takenAt: row.takenAt,
              readIn,
              siteZone: state.record.site.timeZone,
              fileAt: input.fileTimes[attachmentId] ?? null,
            });
      return { row, readIn, isProven, doubtS };
    });
    const steps = stepsOf(state);
    const asked = new Set(
      state.progress.steps.flatMap(({ items }) =>
        items.filter((item) => item.state !== 'waiting').map((item) => item.itemKey),
      ),
    );
    const taken = new Set(state.record.photos.map(({ itemKey }) => itemKey));
    const matched = matchPhotos({
      photos: photos.map(({ row, doubtS }) => ({ photoId: row.id, takenAt: row.takenAt, isDoubted: doubtS !== 0 })),
      places: steps.flatMap((step) =>
        step.items.flatMap((item) =>
          item.kind === 'photo' && asked.has(item.key) && !taken.has(item.key)
            ? [{ stepKey: step.key, itemKey: item.key }]
            : [],
        ),
      ),
      stepKeys: steps.map(({ key }) => key),
      marks: marksOf(state.record),
      visit: { startedAt: state.run.startedAt, endedAt: context.now },
    });
    return photos.map(({ row, readIn, isProven, doubtS }, index) => {
      const { place = null, when = 'unknown', awayS = 0 } = matched[index] ?? {};
      return {
        attachmentId: row.id,
        fileName: row.fileName,
        takenAt: row.takenAt,
        isFromCamera: row.exifAt !== null,
        readIn,
        isProven,
        doubtS,
        place,
        when,
        awayS,
      };
    });
  },
};

function marksOf({ answers, readings }: Pick<RunRecord, 'answers' | 'readings'>) {
  return [
    ...answers.map(({ stepKey, at }) => ({ stepKey, at })),
    ...readings.map(({ stepKey, measuredAt }) => ({ stepKey, at: measuredAt })),
  ];
}
