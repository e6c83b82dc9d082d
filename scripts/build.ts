/** Builds the page and the desktop shell into out/. Usage: npm run build */
import { findAppRoot } from '../electron/appRoot.ts';
import { buildApp } from './buildApp.ts';

await buildApp(findAppRoot(import.meta.url), 'info');
