/** A hot pressure read while the water was cooler than it is set to get: it will rise further, so a second one is asked for. */
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import { inputsOf } from '../measured.ts';
import type { RunContext } from '../runContext.ts';

/** A control holds its setting within a few kelvin. */
const SAME_TEMPERATURE_K = 5;

export function hotBelowSetting(context: RunContext): readonly Finding[] {
  // A yearly service finds whatever the weather asks for.
  if (context.record.kind === 'service') return [];
  const pressure = context.latest('systemPressureBarG', 'hot');
  const supply = context.latest('supplyC', 'hot');
  const setting = highest(context.latest('supplySetpointC'), context.latest('resetDesignSupplyC'));
  if (pressure === undefined || supply === undefined || setting === undefined) return [];
  if (setting.value - supply.value <= SAME_TEMPERATURE_K) return [];
  return [
    buildFinding({
      subject: 'hot-below-setting',
      readingId: pressure.reading.readingId,
      verdict: 'cannot-judge',
      basis: {
        from: 'practice',
        source: { kind: 'common-practice', source: 'the hot pressure is read at the highest temperature that is set' },
        inputs: { ...inputsOf([pressure, supply, setting]) },
      },
      missing: ['a second hot pressure, at the highest temperature that is set'],
    }),
  ];
}

function highest<T extends { readonly value: number }>(one: T | undefined, other: T | undefined): T | undefined {
  if (one === undefined || other === undefined) return one ?? other;
  return one.value >= other.value ? one : other;
}
