/** Settings left as the boiler came from the works: each needs a chosen value, or the reason for keeping it. */
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import { inputsOf } from '../measured.ts';
import type { RunContext } from '../runContext.ts';

/** Half a degree or half a unit: settings come in whole steps. */
const SAME_SETTING = 0.5;

export function factoryDefaults(context: RunContext): readonly Finding[] {
  return context.sheet.factoryDefaults.flatMap(({ quantity, value }) => {
    const set = context.latest(quantity);
    if (set === undefined || Math.abs(set.value - value) > SAME_SETTING) return [];
    const reason = context.answer(set.reading.itemKey)?.reason?.trim() ?? '';
    if (reason !== '') return [];
    return [
      buildFinding({
        subject: `default:${quantity}`,
        readingId: set.reading.readingId,
        verdict: 'cannot-judge',
        blocks: ['leaving'],
        basis: {
          from: 'sheet',
          sheet: { sheetId: context.sheet.sheetId, revision: context.sheet.revision },
          inputs: { ...inputsOf([set]), factoryDefault: value },
        },
        missing: ['a chosen value, or the reason for keeping the factory setting'],
      }),
    ];
  });
}
