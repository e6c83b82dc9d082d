/** The demo's own store, made afresh from the invented scenario; it never lies where a real store does. */
import { readFileSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { openAttachmentFiles } from '../../db/attachmentFiles.ts';
import { openStore, storePath } from '../../db/openStore.ts';
import { loadScenario } from './loadScenario.ts';
import { scenario } from './scenario.ts';

export type DemoOptions = {
  readonly folder: string;
  readonly appRoot: string;
  readonly migrationsFolder: string;
  readonly now: string;
};

/** Everybody in the demo has this PIN; it is shown on its sign-in screen. */
export const DEMO_PIN = '1234';

export function buildDemoStore(options: DemoOptions): void {
  const data = scenario.parse(JSON.parse(readFileSync(join(options.appRoot, 'assets/demo/scenario.json'), 'utf8')));
  // Made aside: a demo that failed half-way is never opened as if it were whole.
  const aside = `${options.folder}.part`;
  rmSync(aside, { recursive: true, force: true });
  const store = openStore({
    path: storePath(aside),
    purpose: 'demo',
    migrationsFolder: options.migrationsFolder,
    now: options.now,
  });
  try {
    const files = openAttachmentFiles(join(aside, 'attachments'));
    const readPhoto = (name: string): Uint8Array => readFileSync(join(options.appRoot, 'assets/demo/photos', name));
    loadScenario(store, data, {
      appRoot: options.appRoot,
      now: options.now,
      pin: DEMO_PIN,
      putFile: files.put,
      readPhoto,
    });
  } finally {
    store.close();
  }
  rmSync(options.folder, { recursive: true, force: true });
  renameSync(aside, options.folder);
}
