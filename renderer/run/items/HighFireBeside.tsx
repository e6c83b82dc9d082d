/** How long high fire can be held on what is open here, before it is lit for the readings: a load too small ends them half-way. */
import { highFireHold, USUAL_RISE_K } from '../../../domain/judgement/site/highFireHold.ts';
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import { formatNumber } from '../../../domain/quantity/formatQuantity.ts';
import { QuantityText } from '../../kit/QuantityText.tsx';
import { useRun } from '../state/RunContext.ts';

export function HighFireBeside({ item }: { readonly item: ItemOf<'series'> }) {
  const { view, unitSystem } = useRun();
  if (item.firingPoint !== view.sheet.firingPoints[0]?.key) return null;
  const hold = highFireHold(view.record, view.sheet);
  if (hold === null) return null;
  const held = (
    <>
      With every zone open high fire can be held for about <b>{minutesText(hold.minutes)}</b>; the readings take{' '}
      {minutesText(hold.neededMinutes)}.
    </>
  );
  if (hold.minutes >= hold.neededMinutes) return <p className="run-beside">{held}</p>;
  return (
    <p className="run-beside" data-tone="caution">
      {held} <b>Run hot water as well, or begin with cool water.</b>{' '}
      <span className="lo-faint">
        The zones take <QuantityText quantity="ratedInputKw" value={hold.loadKw} /> of{' '}
        <QuantityText quantity="ratedInputKw" value={hold.fireKw} />; {formatNumber(hold.systemVolumeL, 0)} L of water
        get {unitSystem === 'us' ? `${formatNumber(USUAL_RISE_K * 1.8, 0)} °F` : `${USUAL_RISE_K} K`} warmer meanwhile
        (common practice)
      </span>
    </p>
  );
}

function minutesText(minutes: number): string {
  return `${formatNumber(minutes, minutes < 10 && !Number.isInteger(minutes) ? 1 : 0)} min`;
}
