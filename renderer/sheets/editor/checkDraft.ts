/** What is still wrong with a draft, each complaint in plain words at the field it is about. */
import { crossCheckSheet } from '../../../domain/procedure/crossCheckSheet.ts';
import { modelSheet } from '../../../domain/procedure/modelSheet.ts';
import type { Json } from '../../../domain/procedure/sheetEdit.ts';
import { unreadLimits } from '../../../domain/procedure/unreadLimits.ts';
import { issueWords } from '../../form/issueWords.ts';

export type DraftProblem = { readonly path: string; readonly words: string };

export function checkDraft(body: Json): readonly DraftProblem[] {
  const parsed = modelSheet.safeParse(body);
  if (parsed.success) {
    return crossCheckSheet(parsed.data).map(({ path, message }) => ({ path, words: sentence(message) }));
  }
  return parsed.error.issues.map((issue) => {
    const path = issue.path.map(String);
    return {
      path: path.join('.'),
      words: isTypedText(valueAt(body, path), issue) ? 'Not a number.' : issueWords(issue),
    };
  });
}

/** What may be published and is worth a second look: a limit nothing is held against. */
export function doubtsOf(body: Json): readonly DraftProblem[] {
  const parsed = modelSheet.safeParse(body);
  return parsed.success
    ? unreadLimits(parsed.data).map(({ path, message }) => ({ path, words: sentence(message) }))
    : [];
}

function isTypedText(value: Json | undefined, issue: { readonly code: string; readonly expected?: unknown }): boolean {
  const wantsNumber = issue.code === 'invalid_type' && (issue.expected === 'number' || issue.expected === 'int');
  return wantsNumber && typeof value === 'string' && value !== '';
}

export function valueAt(body: Json | undefined, path: readonly (string | number)[]): Json | undefined {
  return path.reduce<Json | undefined>((value, key) => {
    if (typeof value !== 'object' || value === null) return undefined;
    return Array.isArray(value) ? value[Number(key)] : Object.hasOwn(value, key) ? value[String(key)] : undefined;
  }, body);
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${text.endsWith('.') ? '' : '.'}`;
}
