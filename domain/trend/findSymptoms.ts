import { SYMPTOMS, type Symptom, type TrendChange } from './symptoms.ts';

/**
 * The symptoms that changes between two visits add up to, the ones that must stop work first.
 *
 * Formula  a symptom applies when all changes of one of its sets were seen
 * Valid    only between comparable visits: see `visitComparability`
 * Source   `symptoms.ts`
 * Checked  tests/domain/trend/findSymptoms.test.ts
 */
export function findSymptoms(seen: readonly TrendChange[]): readonly Symptom[] {
  const wasSeen = (change: TrendChange) =>
    seen.some((candidate) => candidate.quantity === change.quantity && candidate.moved === change.moved);
  const applying = SYMPTOMS.filter((symptom) => symptom.whenAnyOf.some((changes) => changes.every(wasSeen)));
  return [...applying.filter((symptom) => symptom.mustStop), ...applying.filter((symptom) => !symptom.mustStop)];
}
