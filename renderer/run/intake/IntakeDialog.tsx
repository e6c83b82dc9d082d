/**
 * Readings out of an instrument's own file: pasted or opened, its columns given a meaning once, each row sent where it
 * belongs, looked at before anything is written. All of it is taken in, or none.
 */
import { useEffect, useMemo, useRef, useState } from 'react';
import { setRight } from '../../../domain/intake/clockOffset.ts';
import type { ExportMapping } from '../../../domain/intake/exportMapping.ts';
import { type ExportLayout, exportTable } from '../../../domain/intake/exportTable.ts';
import { proposeMapping } from '../../../domain/intake/proposeMapping.ts';
import { type ExportRow, readExport } from '../../../domain/intake/readExport.ts';
import type { ClockProblem } from '../../../domain/judgement/mistakes/clockDifferences.ts';
import { ok } from '../../../domain/result.ts';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { useAppStatus } from '../../operations/AppStatus.tsx';
import { useCore } from '../../operations/CoreAccess.tsx';
import { useRun } from '../state/RunContext.ts';
import { Dialog } from '../stop/Dialog.tsx';
import { saveErrorWords } from '../words/saveErrorWords.ts';
import { ClockBeside } from './ClockBeside.tsx';
import { IntakeColumns } from './IntakeColumns.tsx';
import { IntakeRows } from './IntakeRows.tsx';
import { readFileText } from './readFileText.ts';
import { proposedSlots, slotsOf } from './slots.ts';
import { splitCells } from './splitCells.ts';

/** A log of seconds has thousands of rows; what is wanted stands at its end. */
const MOST_ROWS = 200;

export function IntakeDialog({ onClose }: { readonly onClose: () => void }) {
  const { view, analysis, active, write, measuredById, instruments } = useRun();
  const { today } = useAppStatus();
  const core = useCore();
  const [instrumentId, setInstrumentId] = useState(() => firstAnalyser());
  const [text, setText] = useState('');
  const [layout, setLayout] = useState<ExportLayout | null>(null);
  const [kept, setKept] = useState<ExportMapping | null>(null);
  const [changed, setChanged] = useState<ExportMapping | null>(null);
  const [chosenSlots, setChosenSlots] = useState<Readonly<Record<number, string | null>>>({});
  const [keepsTimes, setKeepsTimes] = useState(true);
  const [clock, setClock] = useState<ClockProblem | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [isBusy, setIsBusy] = useState(false);
  const file = useRef<HTMLInputElement>(null);
  const { timeZone } = view.record.site;

  useEffect(() => {
    let isWanted = true;
    setKept(null);
    setChanged(null);
    setClock(null);
    if (instrumentId === '') return undefined;
    void core.call('instruments.getMapping', { instrumentId }).then((reply) => {
      if (isWanted && reply.ok) setKept(reply.value.mapping);
    });
    return () => {
      isWanted = false;
    };
  }, [core, instrumentId]);

  const whole = useMemo(() => (text.trim() === '' ? null : exportTable(splitCells(text), layout)), [text, layout]);
  const table = useMemo(() => whole && { ...whole, rows: whole.rows.slice(-MOST_ROWS) }, [whole]);
  const mapping = useMemo(
    () => changed ?? (table === null ? null : proposeMapping(table, kept)),
    [changed, table, kept],
  );
  const rows = useMemo(
    () =>
      table === null || mapping === null
        ? []
        : readExport(table, mapping, { timeZone, day: today }).map((row) => byLaptop(row, clock)),
    [table, mapping, timeZone, today, clock],
  );
  const quantities = new Set(rows.flatMap((row) => row.values.map((one) => one.quantity)));
  const slots = slotsOf(analysis.steps, analysis.progress, view.record, view.sheet, Math.min(rows.length, 10)).filter(
    (slot) => slot.quantities.some((quantity) => quantities.has(quantity)),
  );
  const proposed = proposedSlots(rows, slots, active);
  const goesTo = rows.map((_, index) => {
    const key = index in chosenSlots ? chosenSlots[index] : proposed[index];
    return slots.find((slot) => slot.key === key) ?? null;
  });
  const readings = rows.flatMap((row, index) => {
    const slot = goesTo[index];
    if (slot == null) return [];
    return row.values
      .filter(({ quantity }) => slot.quantities.includes(quantity))
      .map((value) => ({ slot, value, measuredAt: keepsTimes ? row.measuredAt : null }));
  });
  const hindrance = whatHinders();

  function firstAnalyser(): string {
    const inHand = instruments.inHand('analyser');
    return (inHand.state === 'chosen' ? inHand.instrumentId : null) ?? instruments.list[0]?.instrumentId ?? '';
  }

  function whatHinders(): string | null {
    if (text.trim() === '') return 'Paste the lines of the export, or open its file.';
    if (table === null) return 'No readings are seen in this text: it needs names and numbers in columns or lines.';
    if (instrumentId === '') return 'Say which instrument it comes from.';
    if (quantities.size === 0) return 'Say what at least one column is.';
    if (readings.length === 0) return 'Say where at least one row goes.';
    const keys = goesTo.flatMap((slot) => slot?.key ?? []);
    if (new Set(keys).size < keys.length) return 'Two rows go to the same place: leave one out.';
    if (readings.some(({ value }) => !value.read.ok)) return 'A number that is to go in cannot be read: see the rows.';
    if (readings.some(({ measuredAt }) => measuredAt?.ok === false)) return 'A time cannot be read: see the rows.';
    return null;
  }

  const open = async (files: FileList | null) => {
    const [first] = files ?? [];
    if (first === undefined) return;
    const read = await readFileText(first);
    setTrouble(read.ok ? null : read.error);
    take(read.ok ? read.value : '');
  };
  const take = (taken: string) => {
    setText(taken);
    setChanged(null);
    setChosenSlots({});
    setTrouble(null);
  };
  const takeIn = async () => {
    if (hindrance !== null || mapping === null) return;
    setIsBusy(true);
    setTrouble(null);
    const { visitId, runId } = view;
    for (const stepKey of new Set(readings.map(({ slot }) => slot.stepKey))) {
      if (!view.openedSteps.includes(stepKey)) await write('visits.openStep', { visitId, runId, stepKey });
    }
    const reply = await write('visits.importReadings', {
      visitId,
      runId,
      instrumentId,
      measuredById,
      decimalSign: mapping.decimalSign,
      readings: readings.map(({ slot, value, measuredAt }) => ({
        stepKey: slot.stepKey,
        itemKey: slot.itemKey,
        sample: slot.sample,
        quantity: value.quantity,
        typedText: value.cell.trim(),
        typedUnit: value.unit,
        measuredAt: measuredAt?.ok ? measuredAt.value : null,
      })),
    });
    setIsBusy(false);
    if (!reply.ok) {
      setTrouble(saveErrorWords(reply.error));
      return;
    }
    // The next file of this instrument is read the same way; that it was not kept is no reason to hold the readings back.
    void core.call('instruments.keepMapping', { instrumentId, mapping });
    onClose();
  };

  return (
    <Dialog label="Readings from an instrument" onEscape={onClose}>
      <form
        className="run-intake"
        onSubmit={(event) => {
          event.preventDefault();
          void takeIn();
        }}
      >
        <div className="run-stop-head">
          <h2>Readings from an instrument’s own file</h2>
          <button type="button" className="run-button" onClick={onClose}>
            Back to the run <KeyHint keys="Esc" />
          </button>
        </div>
        <div className="run-box-row">
          <label>
            Instrument{' '}
            <select value={instrumentId} onChange={(event) => setInstrumentId(event.currentTarget.value)}>
              <option value="">which one?</option>
              {instruments.list.map((one) => (
                <option key={one.instrumentId} value={one.instrumentId}>
                  {one.label} ({one.serial})
                </option>
              ))}
            </select>
          </label>
          <button type="button" className="run-button" onClick={() => file.current?.click()}>
            Open a file (CSV, TXT) …
          </button>
          <input
            ref={file}
            type="file"
            accept=".csv,.txt,.tsv,.log,text/*"
            hidden
            aria-label="The instrument’s file"
            onChange={(event) => {
              void open(event.currentTarget.files);
              event.currentTarget.value = '';
            }}
          />
          {kept === null ? null : <span className="lo-faint">Its columns are known from an earlier file.</span>}
        </div>
        <label className="run-intake-text">
          The export, pasted
          <textarea
            data-first
            rows={table === null ? 6 : 2}
            spellCheck={false}
            value={text}
            onChange={(event) => take(event.currentTarget.value)}
          />
        </label>
        {table === null || mapping === null || whole === null ? null : (
          <>
            <IntakeColumns
              table={table}
              mapping={mapping}
              layout={layout}
              instrumentKind={instruments.list.find((one) => one.instrumentId === instrumentId)?.kind ?? null}
              wanted={new Set(analysis.steps.flatMap((step) => step.items).flatMap(quantitiesOf))}
              onLayout={(wanted) => {
                setLayout(wanted);
                setChanged(null);
                setChosenSlots({});
              }}
              onChange={(next) => setChanged(next)}
            />
            {whole.rows.length > MOST_ROWS ? (
              <p className="run-card-why">
                {whole.rows.length} rows in the file: only the last {MOST_ROWS} are shown.
              </p>
            ) : null}
            {keepsTimes && rows.some((row) => row.measuredAt !== null) ? (
              <ClockBeside key={instrumentId} taken={clock} onTake={setClock} />
            ) : null}
            <IntakeRows
              rows={rows}
              slots={slots}
              goesTo={goesTo}
              keepsTimes={keepsTimes}
              onKeepsTimes={setKeepsTimes}
              onChoose={(index, key) => setChosenSlots((before) => ({ ...before, [index]: key }))}
            />
          </>
        )}
        <div className="run-box-row">
          <button
            type="submit"
            className="run-button run-button-main"
            disabled={hindrance !== null || isBusy}
            aria-busy={isBusy}
          >
            {readings.length === 0 ? 'Take in' : `Take in ${readings.length} readings`}
          </button>
          <span role="status">{trouble ?? hindrance ?? 'They are judged like typed ones.'}</span>
        </div>
      </form>
    </Dialog>
  );
}

/** Its time by the laptop's clock. */
function byLaptop(row: ExportRow, clock: ClockProblem | null): ExportRow {
  const { measuredAt } = row;
  return clock === null || measuredAt === null || !measuredAt.ok
    ? row
    : { ...row, measuredAt: ok(setRight(measuredAt.value, clock)) };
}

function quantitiesOf(item: ReturnType<typeof useRun>['analysis']['steps'][number]['items'][number]) {
  if (item.kind === 'read') return [item.quantity];
  return item.kind === 'series' ? [...item.quantities, ...item.optional] : [];
}
