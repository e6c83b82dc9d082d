import { describe, expect, it } from 'vitest';
import { newId } from '../../db/newId.ts';

/** RFC 9562 §5.7: 48 bits of Unix milliseconds, version 7, variant 10. The example of its appendix A.6. */
const RFC_MS = 0x017f22e279b0;

describe('ids', () => {
  it('carries time, version and variant where RFC 9562 has them', () => {
    expect(newId(RFC_MS)).toMatch(/^017f22e2-79b0-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  });

  it('sorts in the order they were made, within one millisecond too, and none comes twice', () => {
    const made = [
      ...Array.from({ length: 10_000 }, () => newId(RFC_MS)),
      ...Array.from({ length: 10_000 }, () => newId(RFC_MS + 1)),
    ];
    expect(made.toSorted()).toEqual(made);
    expect(new Set(made).size).toBe(made.length);
  });

  it('draws anew when the clock was set back, and does not repeat what it made before', () => {
    const first = Array.from({ length: 1000 }, () => newId(RFC_MS));
    newId(RFC_MS + 5);
    const again = Array.from({ length: 1000 }, () => newId(RFC_MS));
    expect(new Set([...first, ...again]).size).toBe(2000);
  });
});
