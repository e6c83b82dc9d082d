/** Matches photos to the steps of a run by when they were taken. */
import { findAttachment } from '../../db/attachments.ts';
import { matchPhotos } from '../../domain/photos/matchPhotos.ts';
import { type Handlers, notFound } from './handler.ts';
import { readRunState, stepsOf } from './runState.ts';

export const photoHandlers: Handlers<'photos.match'> = {
  'photos.match': (input, context) => {
    const state = readRunState(context.db, input.runId, input.visitId, context.now);
    const rows = input.attachmentIds.map(
      (attachmentId) => findAttachment(context.db, attachmentId) ?? notFound('attachments', attachmentId),
    );
    const { answers, readings, photos } = state.record;
    const matched = matchPhotos({
      photos: rows.map((row) => ({ photoId: row.id, takenAt: row.takenAt })),
      steps: stepsOf(state),
      marks: [
        ...answers.map(({ stepKey, at }) => ({ stepKey, at })),
        ...readings.map(({ stepKey, measuredAt }) => ({ stepKey, at: measuredAt })),
      ],
      takenItemKeys: new Set(photos.map(({ itemKey }) => itemKey)),
      visit: { startedAt: state.run.startedAt, endedAt: context.now },
    });
    return rows.map((row, index) => {
      const { place = null, when = 'unknown', awayS = 0 } = matched[index] ?? {};
      return {
        attachmentId: row.id,
        fileName: row.fileName,
        takenAt: row.takenAt,
        isFromCamera: row.exifAt !== null,
        place,
        when,
        awayS,
      };
    });
  },
};
