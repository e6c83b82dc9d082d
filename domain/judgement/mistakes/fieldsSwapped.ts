/** Two water-quality fields in each other's box, or a share in the wrong order of magnitude. */
import type { QuantityKey } from '../../quantity/quantities.ts';
import type { Finding } from '../finding.ts';
import type { RunContext } from '../runContext.ts';
import { exchange, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';
import { isIn, type PlausibleRange } from './plausibleRanges.ts';

/** What each field is seen to hold in a treated system. */
const USUAL: Readonly<Partial<Record<QuantityKey, PlausibleRange>>> = {
  waterPh: [5.5, 11.5],
  inhibitorPct: [0, 5.4],
  conductivityUsPerCm: [10, 5000],
  hardnessMmolPerL: [0, 6],
};
const PAIRS: readonly (readonly [QuantityKey, QuantityKey])[] = [
  ['waterPh', 'inhibitorPct'],
  ['waterPh', 'hardnessMmolPerL'],
  ['waterPh', 'conductivityUsPerCm'],
];

export const fieldsSwapped: MistakeRule = {
  row: 34,
  find: (context) => PAIRS.flatMap(([one, other]) => swapped(one, other, context)),
};

function swapped(quantity: QuantityKey, otherQuantity: QuantityKey, context: RunContext): readonly Finding[] {
  const range = USUAL[quantity];
  const otherRange = USUAL[otherQuantity];
  if (range === undefined || otherRange === undefined) return [];
  return context.all(quantity).flatMap((one) => {
    const other = context.latest(otherQuantity, one.point);
    if (other === undefined || (isIn(one.value, range) && isIn(other.value, otherRange))) return [];
    if (!isIn(other.value, range) || !isIn(one.value, otherRange)) return [];
    return [
      mistakeFinding(
        {
          code: 'fields-swapped',
          about: [one, other],
          from: 'practice',
          rule: 'one of the two is outside what its field ever holds; exchanged, both are inside',
          ask: 'which number belongs in which box?',
          suggestions: [exchange('fields-swapped', one, other)],
        },
        context,
      ),
    ];
  });
}
