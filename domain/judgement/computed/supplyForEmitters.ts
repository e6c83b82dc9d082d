/** Supply settings and the supply at the manifold against what the sheet allows the emitters on this site. */
import type { QuantityKey } from '../../quantity/quantities.ts';
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import { againstLimit } from '../limits/againstLimit.ts';
import { judgedReading } from '../limits/judgedValue.ts';
import type { RunContext } from '../runContext.ts';

/** Where the water meets the emitter, or what the control will let out at most. */
const SUPPLIES: readonly QuantityKey[] = ['supplySetpointC', 'manifoldSupplyC', 'resetDesignSupplyC'];

export function supplyForEmitters(context: RunContext): readonly Finding[] {
  const { emitters } = context.record.site;
  const rows = context.sheet.supplyByEmitter.filter((row) => emitters.includes(row.emitter));
  // One boiler for several emitters is set for the hottest of them; the others are mixed down and read at the manifold.
  const [hottest] = rows.toSorted((one, other) => other.maxSupplyC - one.maxSupplyC);
  const [coolest] = rows.toSorted((one, other) => one.maxSupplyC - other.maxSupplyC);
  if (hottest === undefined || coolest === undefined) return [];
  return SUPPLIES.flatMap((quantity) => {
    const reading = context.latest(quantity);
    if (reading === undefined) return [];
    const row = quantity === 'manifoldSupplyC' ? coolest : hottest;
    const value = judgedReading(reading, context);
    const max = row.maxSupplyC;
    const { verdict, isNominallyInside } = againstLimit(value, { min: null, max, edge: 0, severity: 'outside' });
    return [
      buildFinding({
        subject: `emitter:${quantity}`,
        readingId: value.readingId,
        verdict,
        proof: value.proof,
        blocks: isNominallyInside ? [] : ['leaving'],
        basis: {
          ...value.basis,
          from: 'sheet',
          source: row.basis,
          sheet: { sheetId: context.sheet.sheetId, revision: context.sheet.revision },
          limit: { quantity, point: reading.point, min: null, max, severity: 'outside' },
          inputs: { ...value.basis.inputs, emitter: row.emitter },
        },
        missing: verdict === 'cannot-judge' ? ['a reading inside the instrument’s range'] : [],
      }),
    ];
  });
}
