/** Reads JSON that somebody hands in. What two programs could read differently is refused, not repaired. */
import { err, ok, type Result } from '../../domain/result.ts';

export type JsonProblem =
  | { readonly code: 'not-json'; readonly message: string }
  | { readonly code: 'duplicate-key'; readonly key: string }
  | { readonly code: 'lone-surrogate' }
  | { readonly code: 'number-out-of-range'; readonly text: string }
  | { readonly code: 'nested-too-deeply' };

/** Deeper than any record goes, and shallow enough for every walk over it. */
const DEEPEST = 64;

export function parseJsonStrictly(text: string): Result<unknown, JsonProblem> {
  // Before parsing: a deep document must not exhaust the stack of the parser or of a later walk.
  const found = scan(text);
  if (found.code === 'nested-too-deeply') return err(found);
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (cause) {
    return err({ code: 'not-json', message: cause instanceof Error ? cause.message : String(cause) });
  }
  return found.code === 'none' ? ok(value) : err(found);
}

/** Walks the tokens once; only meaningful for text that is JSON, and harmless for text that is not. */
function scan(text: string): JsonProblem | { readonly code: 'none' } {
  const keysOfOpen: (Set<string> | null)[] = [];
  let first: JsonProblem | { readonly code: 'none' } = { code: 'none' };
  const note = (problem: JsonProblem): void => {
    if (first.code === 'none') first = problem;
  };
  const tokens = /"(?:[^"\\]|\\.)*"|-?\d[\d.eE+-]*|[{}[\]:]/gsu;
  let lastString: string | null = null;
  for (const [token] of text.matchAll(tokens)) {
    if (token === '{' || token === '[') {
      keysOfOpen.push(token === '{' ? new Set() : null);
      if (keysOfOpen.length > DEEPEST) return { code: 'nested-too-deeply' };
    } else if (token === '}' || token === ']') {
      keysOfOpen.pop();
    } else if (token === ':') {
      const keys = keysOfOpen.at(-1);
      if (keys && lastString !== null) {
        if (keys.has(lastString)) note({ code: 'duplicate-key', key: lastString });
        keys.add(lastString);
      }
    } else if (token.startsWith('"')) {
      lastString = readString(token);
      if (lastString !== null && !lastString.isWellFormed()) note({ code: 'lone-surrogate' });
    } else if (!Number.isFinite(Number(token))) {
      note({ code: 'number-out-of-range', text: token });
    }
  }
  return first;
}

function readString(token: string): string | null {
  try {
    return String(JSON.parse(token));
  } catch {
    return null;
  }
}
