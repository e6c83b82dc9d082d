import { describe, expect, it } from 'vitest';
import { makeKeyBuffer, typedText } from '../../../../renderer/run/focus/keyBuffer.ts';

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
  it('holds keys back while a save is on its way and gives them back in order, Enter too', () => {
    const target = new EventTarget();
    const buffer = makeKeyBuffer(target);
    buffer.begin();
    const pressed = ['8', '.', '9', '9', 'Backspace', 'Enter', 'Backspace', '4'].map((key) => press(target, key));
    expect(pressed).toEqual(Array(8).fill(false));
    const keys = buffer.end();
    expect(keys).toEqual(['8', '.', '9', 'Enter', '4']);
    expect(typedText(keys)).toBe('8.94');
  });

  it('never holds back the stop key, nor anything with Alt', () => {
    const target = new EventTarget();
    const buffer = makeKeyBuffer(target);
    buffer.begin();
    expect(press(target, 'F8')).toBe(true);
    expect(press(target, '1', { altKey: true })).toBe(true);
    expect(buffer.end()).toEqual([]);
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
    expect(buffer.end()).toEqual([]);
    expect(buffer.end()).toEqual(['4', '2']);
  });

  it('takes on keys handed over from an earlier save only while it holds', () => {
    const buffer = makeKeyBuffer(new EventTarget());
    expect(buffer.hold(['7'])).toBe(false);
    buffer.begin();
    expect(buffer.hold(['7'])).toBe(true);
    expect(buffer.end()).toEqual(['7']);
  });
});
