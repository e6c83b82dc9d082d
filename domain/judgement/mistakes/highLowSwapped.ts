/** The low-fire readings are the high-fire ones: hotter over return, faster fan, more burner pressure. */
import type { QuantityKey } from '../../quantity/quantities.ts';
import type { Measured } from '../measured.ts';
import type { RunContext } from '../runContext.ts';
import { type MistakeRule, mistakeFinding } from './mistakeFinding.ts';

const HIGH = 'high';
const LOW = 'low';
/** Always larger at high fire, by at least this share of the larger one: turndown is 1 : 2 and more. */
const LARGER_AT_HIGH: readonly QuantityKey[] = ['fanSpeedRpm', 'burnerPowerPct', 'burnerPressureMbarG'];
const CLEARLY_SHARE = 0.1;
/** Flue gas rises less over return at low fire; that much the other way round is no drift. */
const RISE_CLEARLY_K = 3;

export const highLowSwapped: MistakeRule = {
  row: 23,
  find: (context) => {
    const evidence = [...LARGER_AT_HIGH.flatMap((quantity) => reversed(quantity, context)), ...flueRise(context)];
    if (evidence.length === 0) return [];
    return [
      mistakeFinding(
        {
          code: 'high-low-swapped',
          about: evidence,
          from: 'physics',
          rule: 'fan speed, burner pressure and the flue’s rise over return are larger at high fire',
          ask: 'which readings belong to high fire and which to low',
        },
        context,
      ),
    ];
  },
};

function reversed(quantity: QuantityKey, context: RunContext): readonly Measured[] {
  const high = context.latest(quantity, HIGH);
  const low = context.latest(quantity, LOW);
  if (!high || !low) return [];
  return low.value - high.value > Math.abs(low.value) * CLEARLY_SHARE ? [high, low] : [];
}

function flueRise(context: RunContext): readonly Measured[] {
  const high = context.lastRow(HIGH, ['flueGasC']);
  const low = context.lastRow(LOW, ['flueGasC']);
  const [flueHigh, returnHigh] = [high?.get('flueGasC'), high?.near('returnC')];
  const [flueLow, returnLow] = [low?.get('flueGasC'), low?.near('returnC')];
  if (!flueHigh || !returnHigh || !flueLow || !returnLow) return [];
  const riseHigh = flueHigh.value - returnHigh.value;
  const riseLow = flueLow.value - returnLow.value;
  return riseLow - riseHigh > RISE_CLEARLY_K ? [flueHigh, returnHigh, flueLow, returnLow] : [];
}
