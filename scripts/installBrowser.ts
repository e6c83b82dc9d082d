/** Makes sure that the tests find a browser: says where one is, else installs one. Usage: npm run browser */
import { findChromium } from '../tests/support/chromium.ts';
import { installFromDebian, mayInstallDebian, runLoudly } from './debian.ts';

if (!sayWhere()) {
  if (mayInstallDebian()) installFromDebian(['chromium']);
  else runLoudly('npx', ['playwright-core', 'install', 'chromium']);
  if (!sayWhere()) {
    process.stderr.write(
      'No browser could be installed. Install Chromium, Chrome or Edge, or set LIGHTOFF_BROWSER to the path of one.\n',
    );
    process.exit(1);
  }
}

function sayWhere(): boolean {
  try {
    process.stdout.write(`Browser for the tests: ${findChromium()}\n`);
    return true;
  } catch (error) {
    process.stdout.write(`${error instanceof Error ? error.message : String(error)}\n`);
    return false;
  }
}
