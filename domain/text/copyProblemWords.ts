/** What was found on opening a backup, in words: the same on the screen and on the command line. */
export const COPY_PROBLEM_WORDS = {
  integrity: 'the file is damaged',
  'foreign-keys': 'records in it do not fit together',
  'seal-chain': 'the chain of sealed records is broken',
  'not-a-store': 'it is not a Lightoff store',
  'newer-program': 'it was made by a newer version of the program',
} as const;
