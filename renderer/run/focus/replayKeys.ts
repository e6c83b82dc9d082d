/**
 * Gives keys that were held back to the box that has the keyboard now: text up to the first Enter, then Enter itself, whose
 * save holds back the rest in turn. Answers what nobody took: a question is never answered by a key pressed before it was seen.
 */
import { flushSync } from 'react-dom';
import { editBox } from './editBox.ts';
import { type KeyBuffer, typedText } from './keyBuffer.ts';

export function replayKeys(keys: readonly string[], buffer: KeyBuffer): string {
  if (keys.length === 0) return '';
  const box = document.activeElement;
  if (!(box instanceof HTMLInputElement) || box.type !== 'text') return typedText(keys);
  const enterAt = keys.indexOf('Enter');
  const text = enterAt < 0 ? keys : keys.slice(0, enterAt);
  // In place of what is selected, as the keys would have done: a box that was read before holds its old number.
  if (text.length > 0) flushSync(() => editBox(box, text.join('')));
  if (enterAt < 0) return '';
  box.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, cancelable: true }));
  const rest = keys.slice(enterAt + 1);
  return rest.length === 0 || buffer.hold(rest) ? '' : typedText(rest);
}
