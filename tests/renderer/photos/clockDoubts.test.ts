import { describe, expect, it } from 'vitest';
import { clockDoubts } from '../../../renderer/photos/clockDoubts.ts';

describe('clockDoubts', () => {
  it('speaks of one picture as one, and of several as several', () => {
    for (const when of ['outside', 'idle', 'doubted'] as const) {
      const [one] = clockDoubts([{ when }]);
      expect(one?.words).toMatch(/^One picture (was|lies|has) .* It is matched by its order only: look at it/);
      expect(one?.words).not.toMatch(/\b(they|their|them)\b/i);
      const [several] = clockDoubts([{ when }, { when: 'during' }, { when }]);
      expect(several?.words).toMatch(/^2 pictures (were|lie|have) .* They are matched by their order only/);
      expect(several?.words).not.toMatch(/zone in it\b|by its own/);
    }
  });

  it('says each kind once, and nothing of what fits or has no time', () => {
    expect(clockDoubts([{ when: 'during' }, { when: 'unknown' }])).toEqual([]);
    const titles = clockDoubts([{ when: 'doubted' }, { when: 'outside' }, { when: 'outside' }]).map(
      ({ title }) => title,
    );
    expect(titles).toEqual([
      'The camera’s clock does not fit this visit',
      'The camera may be set to another time zone',
    ]);
  });
});
