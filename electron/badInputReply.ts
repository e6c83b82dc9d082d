/** What a host answers, in the core's own words, when a message is refused before the core sees it. */
import type { AnyReply } from './contract/operation.ts';

export function badInput(message: string): AnyReply {
  return { ok: false, error: { code: 'bad-input', data: { issues: [{ path: '', message }] } } };
}
