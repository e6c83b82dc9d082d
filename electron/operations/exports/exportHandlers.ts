/** Giving everything out, a little at a time: nobody else waits for it, and it can be left at that. */
import { findCompany } from '../../../db/people.ts';
import { fail, type HandlerContext, type Handlers } from '../handler.ts';
import { keepMade } from '../keepMade.ts';
import { dayIn } from '../today.ts';
import type { ExportFiles } from './exportFiles.ts';

/** How long anybody else may have to wait for an answer meanwhile. */
const TURN_MS = 150;

export const exportHandlers: Handlers<'exports.start' | 'exports.goOn' | 'exports.stop'> = {
  'exports.start': (_input, context) => context.services.exports.start(context.store.path, context.now),

  'exports.goOn': async (input, context) => {
    const progress = await context.services.exports.goOn(input.exportId, TURN_MS);
    if (progress === undefined) return fail('export-stopped', {});
    return progress.isDone ? { isDone: true, ...keep(progress.files, context) } : { isDone: false, ...progress.step };
  },

  'exports.stop': (input, context) => {
    context.services.exports.stop(input.exportId);
    return {};
  },
};

function keep({ zip, files }: ExportFiles, context: HandlerContext) {
  const fileName = `lightoff-export-${dayIn(findCompany(context.db)?.timeZone ?? 'UTC', context.now)}.zip`;
  const attachmentId = keepMade(context, { bytes: zip, mediaType: 'application/zip', fileName, subject: 'export' });
  return { attachmentId, fileName, byteLength: zip.length, files: [...files] };
}
