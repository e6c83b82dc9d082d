/** What came of a claim as a whole. */
export const CLAIM_OUTCOME_WORDS = {
  open: 'open',
  granted: 'granted',
  'granted-in-part': 'granted in part',
  refused: 'refused',
  withdrawn: 'withdrawn',
} as const;
