/**
 * Random cases are the same at every run: what fails here fails everywhere. `npm run fuzz` takes a new seed, which a failure
 * prints; `LIGHTOFF_SEED=…` takes that one.
 */
import fc from 'fast-check';

const asked = process.env['LIGHTOFF_SEED'] ?? '20260301';

fc.configureGlobal(asked === 'new' ? {} : { seed: Number(asked) });
