/** Vent joints photographed against the fewest there can be: one at the boiler and one at every elbow. */
import type { Finding } from '../finding.ts';
import type { RunContext } from '../runContext.ts';
import { computedFinding } from './computedFinding.ts';

export function jointsPhotographed(context: RunContext): readonly Finding[] {
  const photos = context.latest('ventPhotos');
  const elbows = context.record.appliance.ventElbows ?? null;
  if (photos === undefined || elbows === null) return [];
  const fewest = elbows + 1;
  const isShort = photos.value < fewest;
  return [
    computedFinding(
      {
        name: 'joints-photographed',
        point: null,
        from: [photos],
        formula: 'photographed, of at least elbows + 1',
        unit: '',
        value: photos.value,
        plusMinus: null,
        verdict: isShort ? 'outside' : 'within',
        blocks: isShort ? ['leaving'] : [],
        basis: {
          from: 'practice',
          source: { kind: 'common-practice', source: 'every vent joint is seen and photographed' },
          inputs: { fewestJoints: fewest },
        },
        missing: isShort ? [`photos of all vent joints: at least ${fewest}`] : [],
      },
      context,
    ),
  ];
}
