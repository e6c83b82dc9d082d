/** Text as it is compared in searches: no case, no accents, no punctuation, single spaces. */

/** Letters that Unicode decomposition leaves whole. */
const WHOLE_LETTERS: Readonly<Record<string, string>> = {
  ł: 'l',
  ø: 'o',
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ı: 'i',
};

export function foldForSearch(text: string): string {
  return text
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[łøßæœđðþı]/g, (letter) => WHOLE_LETTERS[letter] ?? letter)
    .replaceAll(/[^\p{L}\p{N}+@]+/gu, ' ')
    .trim();
}

/** Words a person typed, each of which must appear. */
export function searchTerms(query: string): readonly string[] {
  return foldForSearch(query).split(' ').filter(Boolean);
}
