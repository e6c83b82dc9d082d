/** Numbers that come out of a typed one when two neighbouring digits change places. */

/** `120.8` gives 210.8, 102.8 and 180.2 (over the point, too). Texts with other than digits and one point give nothing. */
export function transpositions(text: string): readonly number[] {
  const plain = text.trim().replace(',', '.');
  if (!/^\d+(\.\d+)?$/.test(plain)) return [];
  const places = [...plain].flatMap((letter, index) => (letter === '.' ? [] : [index]));
  return places.slice(0, -1).flatMap((place, at) => {
    const next = places[at + 1] ?? place;
    if (plain[place] === plain[next]) return [];
    const letters = [...plain];
    [letters[place], letters[next]] = [plain[next] ?? '', plain[place] ?? ''];
    return [Number(letters.join(''))];
  });
}
