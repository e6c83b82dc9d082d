/** A serial that the maker's pattern does not allow, and the look-alikes that it does. */
import { lookAlikeSerials } from './lookAlikeSerials.ts';
import { type MistakeRule, mistakeFinding } from './mistakeFinding.ts';

/** More look-alikes than these help nobody. */
const MOST_SHOWN = 3;

export const serialOffPattern: MistakeRule = {
  row: 25,
  find: (context) => {
    const { serialPattern } = context.sheet.appliance;
    const { serial } = context.record.appliance;
    const pattern = serialPattern === null ? null : toRegExp(serialPattern);
    const plain = serial.toUpperCase().replaceAll(/[\s-]/g, '');
    if (pattern === null || plain === '' || pattern.test(plain) || pattern.test(serial)) return [];
    const meant = lookAlikeSerials(serial, (candidate) => pattern.test(candidate));
    return [
      mistakeFinding(
        {
          code: 'serial-confusable',
          about: [],
          from: 'practice',
          rule: 'the maker’s pattern for serial numbers',
          ask: 'the serial on the plate’s photo, letter by letter',
          inputs: { serial, ...(meant.length > 0 ? { lookAlikes: meant.slice(0, MOST_SHOWN).join(', ') } : {}) },
          blocks: ['registration'],
        },
        context,
      ),
    ];
  },
};

function toRegExp(pattern: string): RegExp | null {
  try {
    return new RegExp(pattern);
  } catch {
    return null;
  }
}
