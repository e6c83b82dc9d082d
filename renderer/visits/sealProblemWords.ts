/** What does not fit in a chain of sealed records, in words. The codes are the verifier's own. */
const WORDS: Readonly<Record<string, (detail: string | null) => string>> = {
  'bytes-altered': () => 'The record was altered after it was sealed: its fingerprint is another one.',
  'not-canonical': () => 'The record was written anew by something else: its text is not as it was sealed.',
  'not-a-record': (detail) => `This is no record any more${detail === null ? '' : ` (${detail})`}.`,
  'row-differs': (detail) => `What the store says beside the record (${spaced(detail)}) is not what the record says.`,
  'wrong-sequence': (detail) => `An entry before it is missing or out of order: this should be number ${detail}.`,
  'wrong-previous': () =>
    'The entry before it is not the one it was chained to: that one was altered, replaced or taken out.',
  'other-visit': () => 'It belongs to another visit.',
  'amends-unknown': () => 'It amends a record that is not in this chain.',
  'disclosure-differs': (detail) =>
    `A name or words kept beside the record are not the ones that were sealed (${detail}).`,
  'disclosure-without-commitment': (detail) =>
    `Something stands beside the record that was never sealed with it (${detail}).`,
};

export function sealProblemWords({ code, detail }: { readonly code: string; readonly detail: string | null }): string {
  return WORDS[code]?.(detail) ?? code.replaceAll('-', ' ');
}

export function alterationWords({
  path,
  was,
  isNow,
}: {
  readonly path: string;
  readonly was: string | null;
  readonly isNow: string | null;
}): string {
  const where = path === '/' ? 'The whole text' : path.slice(1).replaceAll('/', ' › ');
  if (was === null && isNow === null) return `${where}: changed beyond reading.`;
  if (was === null) return `${where}: “${isNow}” was added.`;
  return isNow === null
    ? `${where}: “${was}” was taken out.`
    : `${where}: “${was}” was sealed, “${isNow}” stands there now.`;
}

function spaced(name: string | null): string {
  return (name ?? '').replaceAll(/([A-Z])/g, ' $1').toLowerCase();
}
