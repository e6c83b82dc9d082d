/** A finding for tests: outside, proven, blocking leaving, unless told otherwise. */
import type { Finding } from '../../domain/judgement/finding.ts';

export function aFinding(overrides: Partial<Finding> = {}): Finding {
  return {
    readingId: null,
    subject: 'coPpm',
    verdict: 'outside',
    proof: { proven: true },
    blocks: ['leaving'],
    basis: { limit: null, from: 'sheet', source: null, sheet: null, formula: null, inputs: {} },
    suggestions: [],
    missing: [],
    makeSafe: [],
    ...overrides,
  };
}
