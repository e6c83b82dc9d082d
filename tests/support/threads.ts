/** Where the built files of the program's threads lie in this run. */
import { pathToFileURL } from 'node:url';

/** Inherited by every process that a run of the tests starts. */
export const THREADS_FOLDER = 'LIGHTOFF_THREADS';

export function threadsFolder(): URL {
  const folder = process.env[THREADS_FOLDER];
  if (folder === undefined) throw new Error('the threads are not built: buildThreads comes first');
  return pathToFileURL(`${folder}/`);
}

export function threadFile(name: 'coreProcess' | 'planWorker' | 'rehearsalWorker' | 'utilityProcessWorker'): URL {
  return new URL(`${name}.js`, threadsFolder());
}
