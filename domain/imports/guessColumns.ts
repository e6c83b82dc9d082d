/** A first proposal for what each column is, from its heading alone. A heading that occurs twice is never guessed: it must be said. */
import { foldForSearch } from '../text/foldForSearch.ts';
import { IMPORT_FIELD_KEYS, type ImportFieldKey, importField } from './importFields.ts';

export function guessColumns(headings: readonly string[]): readonly (ImportFieldKey | null)[] {
  const folded = headings.map(foldForSearch);
  const taken = new Set<ImportFieldKey>();
  return folded.map((heading) => {
    if (heading === '' || folded.indexOf(heading) !== folded.lastIndexOf(heading)) return null;
    const key = IMPORT_FIELD_KEYS.find((one) => !taken.has(one) && isHeadingOf(one, heading));
    if (key === undefined) return null;
    taken.add(key);
    return key;
  });
}

function isHeadingOf(key: ImportFieldKey, heading: string): boolean {
  const { label, headings } = importField(key);
  return foldForSearch(label) === heading || foldForSearch(key) === heading || headings.includes(heading);
}
