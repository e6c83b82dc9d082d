/** Makes sure that the tests find the system's programs: installs what is missing where it may, else says which tests are left out. Usage: npm run tools */
import { installFromDebian, mayInstallDebian } from './debian.ts';
import { missingTools, SYSTEM_TOOLS } from './systemTools.ts';

/** A slow network shall not keep the tests waiting: one program fewer is said, and they go on. */
const WITHIN_MS = 150_000;

// One by one, so that what cannot be had keeps none of the others away.
if (mayInstallDebian())
  for (const name of new Set(missingTools().map((tool) => SYSTEM_TOOLS[tool]))) installFromDebian([name], WITHIN_MS);
const missing = missingTools();
if (missing.length === 0) process.stdout.write(`System tools for the tests: ${Object.keys(SYSTEM_TOOLS).join(', ')}\n`);
else {
  process.stderr.write(
    `Not on this computer: ${missing.join(', ')}. The tests that hold our files against them are skipped; they come in ${[...new Set(missing.map((name) => SYSTEM_TOOLS[name]))].join(', ')}.\n`,
  );
}
