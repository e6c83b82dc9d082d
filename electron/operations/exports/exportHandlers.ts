/** Giving everything out, a little at a time: nobody else waits for it, and it can be left at that. */
import { join } from 'node:path';
import { companyToday } from '../companyToday.ts';
import { fail, type HandlerContext, type Handlers } from '../handler.ts';
import { keepMade } from '../keepMade.ts';
import type { ExportFiles } from './exportFiles.ts';
import { ASIDE_FOLDER } from './exportRuns.ts';

/** How long anybody else may have to wait for an answer meanwhile. */
const TURN_MS = 150;

export const exportHandlers: Handlers<'exports.start' | 'exports.goOn' | 'exports.stop'> = {
  'exports.start': (input, context) =>
    context.services.exports.start({
      storePath: context.store.path,
      now: context.now,
      choice: input,
      readFile: context.services.attachments.get,
      asideFolder: join(context.services.dataFolder, ASIDE_FOLDER),
    }),

  'exports.goOn': async (input, context) => {
    const progress = await context.services.exports.goOn(input.exportId, TURN_MS);
    if (progress === undefined) return fail('export-stopped', {});
    return progress.isDone
      ? { isDone: true, ...keep(progress.files, progress.takeFileZips(), context) }
      : { isDone: false, ...progress.step };
  },

  'exports.stop': (input, context) => {
    context.services.exports.stop(input.exportId);
    return {};
  },
};

function keep({ zip, ...written }: ExportFiles, fileZips: Iterable<Uint8Array>, context: HandlerContext) {
  // All of it is kept in one go or not yet.
  context.store.requireFree();
  const day = companyToday(context);
  const keepZip = (bytes: Uint8Array, fileName: string) => ({
    attachmentId: keepMade(context, { bytes, mediaType: 'application/zip', fileName, subject: 'export' }),
    fileName,
    byteLength: bytes.length,
  });
  const made = keepZip(zip, `lightoff-export-${day}.zip`);
  const files: ReturnType<typeof keepZip>[] = [];
  for (const bytes of fileZips) files.push(keepZip(bytes, `lightoff-files-${day}-${files.length + 1}.zip`));
  return { ...made, ...written, files: [...written.files], fileZips: files };
}
