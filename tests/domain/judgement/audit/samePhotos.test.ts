/** The same picture for several items or boilers, told by its bytes: papers that were filled in without the work. */
import { describe, expect, it } from 'vitest';
import { samePhotos } from '../../../../domain/judgement/audit/samePhotos.ts';

function run(runId: string, photos: Readonly<Record<string, string>>) {
  return {
    runId,
    record: {
      photos: Object.entries(photos).map(([itemKey, sha256]) => ({
        itemKey,
        sha256,
        attachmentId: `${runId} ${itemKey}`,
        takenAt: '2026-03-02T13:00:00Z',
      })),
    },
  };
}

describe('samePhotos', () => {
  it('sees one picture for every item of a run', () => {
    const one = run('r1', { plate: 'a', meter: 'a', vent: 'a', inside: 'b' });
    expect(samePhotos([one])).toEqual([{ runIds: ['r1'], problem: { code: 'same-photo', photos: 1, places: 3 } }]);
  });

  it('sees the pictures of one boiler put in for others, as one thing to look at', () => {
    const runs = ['r1', 'r2', 'r3'].map((runId) => run(runId, { plate: 'a', vent: 'b' }));
    expect(samePhotos(runs)).toEqual([
      { runIds: ['r1', 'r2', 'r3'], problem: { code: 'same-photo', photos: 2, places: 6 } },
    ]);
  });

  it('asks nothing where every item has a picture of its own', () => {
    expect(samePhotos([run('r1', { plate: 'a', vent: 'b' }), run('r2', { plate: 'c', vent: 'd' })])).toEqual([]);
  });
});
