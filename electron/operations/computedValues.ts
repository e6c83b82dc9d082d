/** The values that findings were worked out to, as they are printed and sealed. */
import type { Finding } from '../../domain/judgement/finding.ts';
import type { ComputedValue } from '../sealing/sealInput.ts';

export function computedValues(findings: readonly Finding[]): readonly ComputedValue[] {
  return findings.flatMap((finding) => {
    const { formula, inputs, result, source, limit } = finding.basis;
    if (formula === null) return [];
    return [
      {
        key: finding.subject,
        label: finding.subject,
        point: limit?.point ?? null,
        value: result?.value ?? null,
        unit: result?.unit ?? '',
        decimals: 2,
        plusMinus: result?.plusMinus ?? null,
        formula,
        inputs,
        source: source?.source ?? null,
        missing: [...finding.missing],
      },
    ];
  });
}
