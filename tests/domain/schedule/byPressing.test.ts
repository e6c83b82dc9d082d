/** What presses first among waiting work: common practice, no source. */
import { expect, it } from 'vitest';
import { byPressing, type Pressing } from '../../../domain/schedule/byPressing.ts';

const plain: Pressing = {
  priority: 1,
  latestOn: null,
  wantedToOn: null,
  openReadiness: [],
  openedAt: '2026-03-05T08:00:00Z',
};

it('goes by priority, latest day, wanted days, what is blocked, and waiting, each before the next', () => {
  const inOrder: readonly (Pressing & { readonly name: string })[] = [
    { ...plain, name: 'before everything', priority: 3 },
    { ...plain, name: 'latest soon', latestOn: '2026-03-10', openReadiness: ['gas'] },
    { ...plain, name: 'latest later', latestOn: '2026-04-10', wantedToOn: '2026-03-06' },
    { ...plain, name: 'wanted soon', wantedToOn: '2026-03-08' },
    { ...plain, name: 'wanted later, blocked', wantedToOn: '2026-03-20', openReadiness: ['gas'] },
    { ...plain, name: 'wanted later', wantedToOn: '2026-03-20' },
    { ...plain, name: 'blocked', openReadiness: ['gas', 'power'] },
    { ...plain, name: 'waits long', openedAt: '2026-02-01T08:00:00Z' },
    { ...plain, name: 'plain' },
    { ...plain, name: 'can wait', priority: 0, latestOn: '2026-03-06' },
  ];
  const names = (list: readonly { readonly name: string }[]) => list.map(({ name }) => name);
  expect(names(inOrder.toReversed().toSorted(byPressing))).toEqual(names(inOrder));
});
