/** A number that a limit can be held against: a reading as it is, or one computed from several. */
import type { QuantityKey } from '../../quantity/quantities.ts';
import type { FindingBasis, Proof } from '../finding.ts';
import { inputsOf, type Measured } from '../measured.ts';
import { proofOf } from '../proof/proofOf.ts';
import type { RunContext } from '../runContext.ts';

export type JudgedValue = {
  readonly quantity: QuantityKey;
  readonly point: string | null;
  readonly value: number;
  readonly lowest: number;
  readonly highest: number;
  /** null: computed; the readings are in the inputs. */
  readonly readingId: string | null;
  readonly proof: Proof;
  readonly basis: Pick<FindingBasis, 'formula' | 'inputs'> & Partial<Pick<FindingBasis, 'result'>>;
};

export function judgedReading(one: Measured, context: RunContext): JudgedValue {
  return {
    quantity: one.quantity,
    point: one.point,
    value: one.value,
    lowest: one.lowest,
    highest: one.highest,
    readingId: one.reading.readingId,
    proof: proofOf([one], context),
    basis: {
      formula: null,
      inputs: one.plusMinus > 0 ? { ...inputsOf([one]), plusMinus: one.plusMinus } : inputsOf([one]),
    },
  };
}
