/** What the display shows at each stage of a tuning run: fan speed, power, supply water. Each run has boxes of its own. */
import { useRef, useState } from 'react';
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import { stagePoint } from '../../../domain/procedure/stagePoint.ts';
import { quantitySpec } from '../../../domain/quantity/quantities.ts';
import { ReadingBox } from '../field/ReadingBox.tsx';
import { useRun } from '../state/RunContext.ts';

export function TuningReadings({
  item,
  here,
  reachedAt,
}: {
  readonly item: ItemOf<'tuning'>;
  readonly here: ItemAddress;
  readonly reachedAt: (stageKey: string) => string | null;
}) {
  const { view, saveThen } = useRun();
  const table = useRef<HTMLTableElement>(null);
  const [detailPlace, setDetailPlace] = useState<HTMLElement | null>(null);
  const [lookedAt, setLookedAt] = useState('');
  const quantities = (item.stageReadings ?? []).map(({ quantity }) => quantity);
  const earlierRuns = view.record.tunings.filter((one) => one.itemKey === item.key).length - 1;
  const first = Math.max(0, earlierRuns) * item.stages.length;
  const reached = item.stages.filter((stage) => reachedAt(stage.key) !== null);
  if (reached.length === 0) return null;

  const next = () => {
    const inputs = [...(table.current?.querySelectorAll<HTMLInputElement>('input') ?? [])];
    const after = inputs[inputs.indexOf(document.activeElement as HTMLInputElement) + 1];
    const main = table.current?.closest('[data-card]')?.querySelector<HTMLElement>('[data-main]');
    (after ?? main)?.focus();
  };
  return (
    <>
      <table className="run-samples" data-by="stage" ref={table}>
        <thead>
          <tr>
            <th scope="col">Stage</th>
            {quantities.map((quantity) => (
              <th key={quantity} scope="col">
                {quantitySpec(quantity).label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {reached.map((stage) => (
            <tr key={stage.key}>
              <th scope="row">{stage.label}</th>
              {quantities.map((quantity) => (
                <td key={quantity}>
                  <ReadingBox
                    address={here}
                    quantity={quantity}
                    point={stagePoint(stage.key)}
                    sample={first + item.stages.indexOf(stage) + 1}
                    label={`${quantitySpec(quantity).label}, ${stage.label}`}
                    size="cell"
                    detailPlace={detailPlace}
                    isLookedAt={lookedAt === `${stage.key} ${quantity}`}
                    onLookedAt={() => setLookedAt(`${stage.key} ${quantity}`)}
                    onEnter={(commit) => void saveThen(commit, next)}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <div ref={setDetailPlace} className="run-series-detail" />
    </>
  );
}
