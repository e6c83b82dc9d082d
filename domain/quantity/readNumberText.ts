/**
 * Reads the number out of what a person typed, in any country's habit, without ever guessing: `1,5`, `1 234,5`, `1'234.5`,
 * `7 1/2` have one reading, `1,234` has two and both are given back, so that the caller can ask.
 */

export type NumberText = {
  readonly comparator: '=' | '>' | '<';
  /** Every number the text can mean: one, or two where a single mark may be a decimal or a thousands mark. */
  readonly candidates: readonly [number, ...number[]];
  /** What follows the number: the unit, or nothing. */
  readonly rest: string;
};

/** Returns null when the text does not start with a number, or when its marks make no sense together. */
export function readNumberText(text: string): NumberText | null {
  const plain = text.replace(/[\u00a0\u2000-\u200a\u202f\u205f\u3000\t]/gu, ' ').trim();
  const [, sign1 = '', sign2 = '', body = ''] = /^(>=?|<=?|≥|≤)?\s*([+\-−–])?\s*(.*)$/su.exec(plain) ?? [];
  const split = splitNumber(body);
  if (split === null) return null;
  const isNegative = sign2 !== '' && sign2 !== '+';
  // `0 - x` rather than `-x`: minus nothing is nothing, not a negative zero.
  const [first, ...others] = split.candidates.map((value) => (isNegative ? 0 - value : value));
  if (first === undefined) return null;
  return { comparator: comparatorOf(sign1), candidates: [first, ...others], rest: split.rest.trim() };
}

function comparatorOf(sign: string): NumberText['comparator'] {
  if (sign.startsWith('>') || sign === '≥') return '>';
  return sign === '' ? '=' : '<';
}

type Split = { readonly candidates: readonly number[]; readonly rest: string };

function splitNumber(body: string): Split | null {
  const fraction = splitFraction(body);
  if (fraction !== null) return fraction;
  // A mark or space belongs to the number only when a digit follows it: `12'` is twelve feet, `1'200` twelve hundred.
  const [digits = ''] = /^[.,]?\d+(?:[.,'’]\d+| \d{3}(?!\d))*/u.exec(body) ?? [];
  if (digits === '') return null;
  const rest = body.slice(digits.length);
  // `5.` and `5,` may lack a digit; `12/80`, `1:10` and `1 5` are two numbers.
  if (/^(?:[.,](?!\p{L})|\s*[\d/⁄:])/u.test(rest)) return null;
  const candidates = readDigits(digits.replaceAll('’', "'"));
  return candidates.length === 0 ? null : { candidates, rest };
}

const VULGAR_FRACTIONS: Readonly<Record<string, number>> = { '¼': 1 / 4, '½': 1 / 2, '¾': 3 / 4, '⅛': 1 / 8 };
/** Inch fractions as they stand on dials and gauges; any other slash is no fraction but two readings. */
const FRACTION_DENOMINATORS = [2, 4, 8, 16];

function splitFraction(body: string): Split | null {
  const vulgar = /^(\d+)?\s*([¼½¾⅛])(.*)$/su.exec(body);
  if (vulgar) {
    const part = VULGAR_FRACTIONS[vulgar[2] ?? ''] ?? 0;
    return { candidates: [Number(vulgar[1] ?? 0) + part], rest: vulgar[3] ?? '' };
  }
  const written = /^(?:(\d+)\s+)?(\d+)\s?[/⁄]\s?(\d+)(?!\d)(.*)$/su.exec(body);
  if (!written) return null;
  const [numerator, denominator] = [Number(written[2]), Number(written[3])];
  if (!FRACTION_DENOMINATORS.includes(denominator) || numerator >= denominator) return null;
  return { candidates: [Number(written[1] ?? 0) + numerator / denominator], rest: written[4] ?? '' };
}

function readDigits(digits: string): readonly number[] {
  if (/^\d+$/.test(digits)) return [Number(digits)];
  if (/^[.,]\d+$/.test(digits)) return [Number(`0.${digits.slice(1)}`)];
  const grouped = /^([1-9]\d{0,2})((?:([ '])\d{3})(?:\3\d{3})*)(?:[.,](\d+))?$/.exec(digits);
  if (grouped) return [Number(`${grouped[1]}${grouped[2]?.replace(/[ ']/g, '')}.${grouped[4] ?? '0'}`)];
  const single = /^(\d+)([.,])(\d+)$/.exec(digits);
  if (single) {
    const decimal = Number(`${single[1]}.${single[3]}`);
    const couldBeThousands = /^[1-9]\d{0,2}$/.test(single[1] ?? '') && single[3]?.length === 3;
    return couldBeThousands ? [decimal, Number(`${single[1]}${single[3]}`)] : [decimal];
  }
  const thousands = /^[1-9]\d{0,2}(?:([.,])\d{3})(?:\1\d{3})+$/.exec(digits);
  if (thousands) return [Number(digits.replace(/[.,]/g, ''))];
  const mixed = /^([1-9]\d{0,2}(?:([.,])\d{3})(?:\2\d{3})*)([.,])(\d+)$/.exec(digits);
  if (mixed && mixed[2] !== mixed[3]) return [Number(`${mixed[1]?.replace(/[.,]/g, '')}.${mixed[4]}`)];
  return [];
}
