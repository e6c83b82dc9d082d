/** Hashing a PIN is slow on purpose, and nearly every test signs somebody in. A hash says its cost: every process reads these. */
import { vi } from 'vitest';

vi.mock('../../electron/operations/pinCost.ts', () => ({ PIN_COST: { N: 2, r: 1, p: 1 } }));
