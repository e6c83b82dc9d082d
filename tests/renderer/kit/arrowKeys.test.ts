import { describe, expect, it } from 'vitest';
import { stopAfter } from '../../../renderer/kit/arrowKeys.ts';

describe('stopAfter', () => {
  it('should enter a list at its top', () => {
    expect(stopAfter('ArrowDown', -1, 3)).toBe(0);
  });

  it('should stop at both ends', () => {
    expect(stopAfter('ArrowDown', 2, 3)).toBe(2);
    expect(stopAfter('ArrowUp', 0, 3)).toBeNull();
  });

  it('should jump to the ends', () => {
    expect(stopAfter('End', 0, 3)).toBe(2);
    expect(stopAfter('Home', 2, 3)).toBe(0);
  });

  it('should leave other keys and an empty list alone', () => {
    expect(stopAfter('Enter', 1, 3)).toBeNull();
    expect(stopAfter('ArrowDown', -1, 0)).toBeNull();
  });
});
