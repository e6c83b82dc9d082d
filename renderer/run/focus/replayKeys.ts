/**
 * Gives keys that were held back to the box that has the keyboard now: text up to the first Enter, then Enter itself, whose
 * save holds back the rest in turn. Answers what nobody took: a question is never answered by a key pressed before it was seen.
 */
import { flushSync } from 'react-dom';
import { type KeyBuffer, typedText } from './keyBuffer.ts';
import { typeInto } from './typeInto.ts';

export function replayKeys(keys: readonly string[], buffer: KeyBuffer): string {
  if (keys.length === 0) return '';
  const box = document.activeElement;
  if (!(box instanceof HTMLInputElement) || box.type !== 'text') return typedText(keys);
  const enterAt = keys.indexOf('Enter');
  const text = enterAt < 0 ? keys : keys.slice(0, enterAt);
  flushSync(() => typeInto(box, text.join('')));
  if (enterAt < 0) return '';
  box.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, cancelable: true }));
  const rest = keys.slice(enterAt + 1);
  return rest.length === 0 || buffer.hold(rest) ? '' : typedText(rest);
}
