/**
 * Samples at one firing point until they are steady: first the moment the burner got there, then a row for each sample with
 * its time. The wait to settle counts from the stored moment; whether a row came too early is the judgement's to say.
 */
import { useEffect, useRef, useState } from 'react';
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import { readAgainSince } from '../../../domain/procedure/progress/readAgainSince.ts';
import type { ItemAddress, ItemProgress } from '../../../domain/procedure/progressTypes.ts';
import { stepListOf } from '../../../domain/procedure/stepListOf.ts';
import { quantitySpec } from '../../../domain/quantity/quantities.ts';
import { FieldSaved } from '../../kit/FieldSaved.tsx';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { CountDown } from '../clock/CountDown.tsx';
import { timeOfDay } from '../clock/timeOfDay.ts';
import { LastTime } from '../field/LastTime.tsx';
import { ReadingBox } from '../field/ReadingBox.tsx';
import { WhoAndWith } from '../field/WhoAndWith.tsx';
import { isAltKey } from '../focus/isAltKey.ts';
import { useKeys } from '../focus/useKeys.ts';
import { useRun } from '../state/RunContext.ts';
import { useItemWrites } from '../state/useItemWrites.ts';
import { HighFireBeside } from './HighFireBeside.tsx';
import { SeriesLeftOut } from './SeriesLeftOut.tsx';
import { SeriesLimits } from './SeriesLimits.tsx';
import { SeriesQuestions } from './SeriesQuestions.tsx';
import { SteadyWords } from './SteadyWords.tsx';
import { boxAfter, firstEmptyBox, type SeriesBox, seriesQuantities, seriesRows } from './seriesPlan.ts';

export function SeriesItem({ item, progress }: { readonly item: ItemOf<'series'>; readonly progress: ItemProgress }) {
  const { view, words, saveAndGoOn, saveThen, sayNotTaken, takeIn } = useRun();
  const [here] = useState<ItemAddress>({ stepKey: progress.stepKey, itemKey: item.key });
  const { ref, state, send } = useItemWrites(here);
  const [extra, setExtra] = useState(0);
  const [detailPlace, setDetailPlace] = useState<HTMLElement | null>(null);
  // The box that was last gone into keeps its words: were they to go when it is left, everything below would jump from under
  // the finger that is on its way to a button.
  const [lookedAt, setLookedAt] = useState<string | null>(null);
  const [leavingOut, setLeavingOut] = useState<SeriesBox | null>(null);
  const table = useRef<HTMLTableElement>(null);
  const { record, sheet } = view;
  const steps = stepListOf(record.kind, sheet);
  const since = item.isAsFound === true ? null : readAgainSince({ record, sheet, steps });
  const rows = seriesRows(item, record, sheet, extra, since);
  const quantities = seriesQuantities(item);
  const reached = record.firingPoints.findLast((one) => one.firingPoint === item.firingPoint);
  const settleS = sheet.firingPoints.find((one) => one.key === item.firingPoint)?.settleS ?? 0;
  const pointLabel = words.firingPointLabel(item.firingPoint);
  const { timeZone } = record.site;
  const firstEmpty = firstEmptyBox(item, record, rows);
  const [startBox] = useState<SeriesBox | null>(firstEmpty);
  const lastRowAt = rows.findLast((row) => row.startedAt !== null)?.startedAt ?? null;
  const isAwaited = progress.state === 'open' && firstEmpty === null;

  const focusBox = (box: SeriesBox) => {
    const input = table.current?.querySelector<HTMLInputElement>(`[data-box="${box.sample} ${box.quantity}"] input`);
    input?.focus();
  };
  const enterFrom = (box: SeriesBox) => (commit: () => Promise<boolean>, notTaken: string) => {
    const next = boxAfter(item, rows, box);
    if (next === null) {
      void saveAndGoOn(here, commit).then(() => sayNotTaken(notTaken));
      return;
    }
    void saveThen(commit, () => focusBox(next)).then(() => sayNotTaken(notTaken));
  };
  const markReached = () =>
    void send('visits.reachFiringPoint', {
      visitId: ref.visitId,
      runId: ref.runId,
      stepKey: here.stepKey,
      firingPoint: item.firingPoint,
    });
  const wasReached = useRef(reached?.reachedAt ?? null);
  useEffect(() => {
    const at = reached?.reachedAt ?? null;
    if (at !== null && at !== wasReached.current) {
      const box = table.current?.querySelector<HTMLInputElement>('input');
      box?.focus();
    }
    wasReached.current = at;
  }, [reached?.reachedAt]);

  const keys = useKeys<HTMLDivElement>((event) => {
    if (isAltKey(event, 'R')) markReached();
    else if (isAltKey(event, 'A')) setExtra((count) => count + 1);
    else return;
    event.preventDefault();
  });
  return (
    <div ref={keys} className="run-series">
      {reached === undefined ? <HighFireBeside item={item} /> : null}
      <div className="run-box-row run-reached">
        <button
          type="button"
          className={reached === undefined ? 'run-button run-button-main' : 'run-button'}
          data-main={reached === undefined ? true : undefined}
          onClick={markReached}
        >
          {reached === undefined ? (
            <>
              Burner is at {pointLabel} now <KeyHint keys="Enter" />
            </>
          ) : (
            <>
              At {pointLabel} again <KeyHint keys="Alt+R" />
            </>
          )}
        </button>
        {reached === undefined ? null : (
          <>
            <span>
              since <b>{timeOfDay(reached.reachedAt, timeZone, true)}</b>
            </span>
            <CountDown
              startedAt={reached.reachedAt}
              totalS={settleS}
              overWords="settled"
              leftWords="to settle"
              isSmall
            />
            {lastRowAt !== null && (firstEmpty !== null || isAwaited) && sheet.steady.apartS > 0 ? (
              <CountDown
                key={lastRowAt}
                startedAt={lastRowAt}
                totalS={sheet.steady.apartS}
                overWords="take the next sample"
                leftWords="to the next sample"
                isSmall
              />
            ) : null}
          </>
        )}
        <FieldSaved state={state} />
      </div>
      <table className="run-samples" ref={table} data-leaves-out-by-box>
        <thead>
          <tr>
            <th scope="col" aria-label="Sample">
              No.
            </th>
            {quantities.map((quantity) => (
              <th key={quantity} scope="col">
                {quantitySpec(quantity).label}
                {item.optional.includes(quantity) ? <span className="lo-faint"> if read</span> : null}
                <SeriesLimits quantity={quantity} firingPoint={item.firingPoint} />
                <LastTime quantity={quantity} point={item.firingPoint} />
              </th>
            ))}
            <th scope="col">Time</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.sample}>
              <th scope="row">{row.sample}</th>
              {quantities.map((quantity) => (
                <td key={quantity} data-box={`${row.sample} ${quantity}`}>
                  <ReadingBox
                    address={here}
                    quantity={quantity}
                    point={item.firingPoint}
                    sample={row.sample}
                    label={`${quantitySpec(quantity).label}, ${pointLabel}, sample ${row.sample}`}
                    size="cell"
                    isMain={
                      reached !== undefined &&
                      row.sample === (startBox?.sample ?? 1) &&
                      quantity === (startBox?.quantity ?? quantities[0])
                    }
                    detailPlace={detailPlace}
                    isLookedAt={lookedAt === `${row.sample} ${quantity}`}
                    onLookedAt={() => setLookedAt(`${row.sample} ${quantity}`)}
                    onEnter={enterFrom({ sample: row.sample, quantity })}
                    onLeaveOut={() => setLeavingOut({ sample: row.sample, quantity })}
                  />
                </td>
              ))}
              <td>
                {row.startedAt === null ? '' : timeOfDay(row.startedAt, timeZone, true)}
                {since !== null && row.startedAt !== null && row.startedAt < since ? ' before' : ''}
                {since !== null && row.startedAt !== null && row.startedAt >= since ? ' after' : ''}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {leavingOut === null ? null : (
        <SeriesLeftOut address={here} box={leavingOut} onDone={() => setLeavingOut(null)} />
      )}
      <SteadyWords item={item} />
      <SeriesQuestions item={item} keys={keys} />
      <div ref={setDetailPlace} className="run-series-detail" />
      <div className="run-box-row">
        <button type="button" className="run-button" onClick={() => setExtra((count) => count + 1)}>
          Another sample <KeyHint keys="Alt+A" />
        </button>
        <button type="button" className="run-button" onClick={takeIn}>
          From the instrument’s file … <KeyHint keys="Alt+I" />
        </button>
        <button type="button" className="run-button" onClick={() => void saveAndGoOn(here, async () => true)}>
          Go on
        </button>
        <WhoAndWith quantity={quantities[0] ?? 'o2DryVolPct'} />
      </div>
    </div>
  );
}
