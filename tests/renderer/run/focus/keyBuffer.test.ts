import { describe, expect, it } from 'vitest';
import { makeKeyBuffer } from '../../../../renderer/run/focus/keyBuffer.ts';

function press(target: EventTarget, key: string, modifiers: { readonly altKey?: boolean } = {}): boolean {
  const event = Object.assign(new Event('keydown', { cancelable: true }), {
    key,
    altKey: modifiers.altKey ?? false,
    ctrlKey: false,
    metaKey: false,
  });
  return target.dispatchEvent(event);
}

describe('makeKeyBuffer', () => {
  it('holds characters back while a save is on its way and gives them back in order', () => {
    const target = new EventTarget();
    const buffer = makeKeyBuffer(target);
    buffer.begin();
    expect(['8', '.', '9', '9', 'Backspace', 'Enter'].map((key) => press(target, key))).toEqual(Array(6).fill(false));
    expect(buffer.end()).toBe('8.9');
  });

  it('never holds back the stop key, nor anything with Alt', () => {
    const target = new EventTarget();
    const buffer = makeKeyBuffer(target);
    buffer.begin();
    expect(press(target, 'F8')).toBe(true);
    expect(press(target, '1', { altKey: true })).toBe(true);
    expect(buffer.end()).toBe('');
  });

  it('lets keys through before and after', () => {
    const target = new EventTarget();
    const buffer = makeKeyBuffer(target);
    expect(press(target, '1')).toBe(true);
    buffer.begin();
    buffer.end();
    expect(press(target, '1')).toBe(true);
  });

  it('gives the keys to the last of two saves that overlap', () => {
    const target = new EventTarget();
    const buffer = makeKeyBuffer(target);
    buffer.begin();
    press(target, '4');
    buffer.begin();
    press(target, '2');
    expect(buffer.end()).toBe('');
    expect(buffer.end()).toBe('42');
  });
});
