/**
 * The box a number is typed into: unit shown and switchable, read and judged at every keystroke, saved when it is left.
 * What the judgement says stands in `detail`, below the box or in a place the caller keeps for it.
 */
import { useId, useMemo, useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import type { Finding, Suggestion } from '../../../domain/judgement/finding.ts';
import { isAbout } from '../../../domain/judgement/judgeReading.ts';
import { heaviestVerdict } from '../../../domain/judgement/verdictRank.ts';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import type { RecordedReading } from '../../../domain/procedure/runRecord.ts';
import { parseTyped, type TypedMeaning } from '../../../domain/quantity/parseTyped.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { FieldSaved, type SaveState } from '../../kit/FieldSaved.tsx';
import { VerdictMark } from '../../kit/VerdictMark.tsx';
import { isAltKey } from '../focus/isAltKey.ts';
import { instrumentChoices, mustNameInstrument } from '../instruments/instrumentChoices.ts';
import { instrumentKindFor } from '../instruments/instrumentKindFor.ts';
import { useRun } from '../state/RunContext.ts';
import { problemWords } from '../words/problemWords.ts';
import { saveErrorWords } from '../words/saveErrorWords.ts';
import { mayTake } from '../words/suggestionWords.ts';
import { InstrumentAsk } from './InstrumentAsk.tsx';
import { limitsFor } from './limitsFor.ts';
import { asksSomething, heaviestFirst, liveFindings } from './liveFindings.ts';
import { meaningText } from './meaningText.ts';
import { ReadingDetail } from './ReadingDetail.tsx';
import { useEntryUnit } from './useEntryUnit.ts';
import { useField } from './useField.ts';
import { WhoAndWith } from './WhoAndWith.tsx';

export type ReadingBoxProps = {
  readonly address: ItemAddress;
  readonly quantity: QuantityKey;
  readonly point: string | null;
  readonly sample: number;
  /** As a screen reader says it: the quantity and where it is read. */
  readonly label: string;
  readonly size: 'large' | 'cell';
  /** Gets the keyboard when the item is opened. */
  readonly isMain?: boolean;
  /** Where the judgement is written instead of below the box, while the box has the keyboard. */
  readonly detailPlace?: HTMLElement | null;
  /** Saves and goes wherever is next. */
  readonly onEnter: (commit: () => Promise<boolean>) => void;
  readonly onLeaveOut?: () => void;
};

export function ReadingBox(props: ReadingBoxProps) {
  const { address, quantity, point, sample, label, size, isMain = false, detailPlace, onEnter, onLeaveOut } = props;
  const { view, analysis, unitSystem, write, signedIn, instruments, measuredById } = useRun();
  const reading = standingReading(view.record.readings, address.itemKey, quantity, sample);
  const storedText = reading === undefined || reading.valueOwn === null ? '' : reading.typedText;
  const { unit, units, switchUnit } = useEntryUnit(
    quantity,
    unitSystem,
    reading?.valueOwn == null ? null : reading.typedUnit,
  );
  const messageId = useId();
  const [hasFocus, setHasFocus] = useState(false);
  const [isRetyped, setIsRetyped] = useState(false);
  /** The text Enter was already pressed on: a second Enter keeps it as it is. */
  const keptText = useRef<string | null>(null);
  const latestView = useRef(view);
  latestView.current = view;
  const kind = instrumentKindFor(quantity);
  const inHand = instruments.inHand(kind);
  const instrumentId = inHand.state === 'chosen' ? inHand.instrumentId : null;
  const choices = instrumentChoices(quantity, instruments.list);
  const mustAsk = inHand.state === 'unknown' && mustNameInstrument(quantity) && choices.length > 0;
  const [isAsking, setIsAsking] = useState(false);
  const latestInstrument = useRef(instrumentId);
  latestInstrument.current = instrumentId;
  const ref = { visitId: view.visitId, runId: view.runId, ...address };

  const field = useField({
    address,
    box: `${quantity} ${sample}`,
    label,
    stored: storedText,
    save: async (text) => {
      const read = parseTyped(quantity, text, unit.symbol);
      if (!read.ok) return { ok: false, why: problemWords(read.error) };
      const reply = await write('visits.recordReading', {
        ...ref,
        quantity,
        sample,
        typedText: text.trim(),
        typedUnit: unit.symbol,
        notMeasuredReason: null,
        instrumentId: latestInstrument.current,
        measuredById,
      });
      return reply.ok ? { ok: true } : { ok: false, why: saveErrorWords(reply.error) };
    },
  });

  const { text, isChanged } = field;
  const parsed = useMemo(
    () => (text.trim() === '' ? null : parseTyped(quantity, text, unit.symbol)),
    [quantity, text, unit.symbol],
  );
  const findings = useMemo<readonly Finding[]>(() => {
    if (parsed === null || !parsed.ok) return [];
    if (!isChanged && reading !== undefined) {
      return heaviestFirst(analysis.findings.filter((finding) => isAbout(finding, reading.readingId)));
    }
    return liveFindings(
      view,
      {
        visitId: view.visitId,
        stepKey: address.stepKey,
        itemKey: address.itemKey,
        quantity,
        point,
        sample,
        notMeasuredReason: null,
        instrumentId,
        measuredById,
        typedById: signedIn.staffId,
        measuredAt: new Date().toISOString(),
        origin: 'typed',
      },
      parsed.value,
    );
  }, [
    parsed,
    isChanged,
    reading,
    analysis.findings,
    view,
    address,
    quantity,
    point,
    sample,
    instrumentId,
    measuredById,
    signedIn,
  ]);
  const problem = parsed !== null && !parsed.ok ? parsed.error : null;
  const meanings = problem?.code === 'ambiguous' ? problem.meanings : [];
  const suggestions = findings.flatMap((finding) => finding.suggestions).filter(mayTake);
  const verdict = heaviestVerdict(findings);

  const takeMeaning = (meaning: TypedMeaning) => field.type(meaningText(meaning));
  const takeSuggestion = async (suggestion: Suggestion) => {
    // It is about stored readings: what is typed is stored first, and stays on file as the original.
    if (!(await field.commit())) return;
    const stored = standingReading(latestView.current.record.readings, address.itemKey, quantity, sample);
    if (stored === undefined) return;
    const { visitId, runId } = view;
    await write('visits.takeSuggestion', { visitId, runId, readingId: stored.readingId, code: suggestion.code });
  };

  const chooseInstrument = (chosenId: string | null) => {
    if (kind === null) return;
    instruments.choose(kind, chosenId);
    latestInstrument.current = chosenId;
    setIsAsking(false);
    goOn();
  };
  const enter = () => {
    if (isAsking) chooseInstrument(null);
    else if (isChanged && problem === null && mustAsk) setIsAsking(true);
    else goOn();
  };
  const goOn = () => {
    const needsLook = isChanged && problem === null && keptText.current !== text && asksSomething(findings);
    if (!needsLook) {
      onEnter(field.commit);
      return;
    }
    keptText.current = text;
    void field.commit();
  };

  const detail = isAsking ? (
    <InstrumentAsk choices={choices} onChoose={chooseInstrument} />
  ) : (
    <ReadingDetail
      quantity={quantity}
      limits={limitsFor(view.sheet, view.record.fuel, quantity, point)}
      unit={unit}
      findings={findings}
      problem={problem}
      isRefused={size === 'large' && field.state.kind === 'not-saved'}
      isKept={keptText.current === text && asksSomething(findings)}
      onMeaning={takeMeaning}
      onSuggestion={(suggestion) => void takeSuggestion(suggestion)}
    />
  );
  return (
    <div className="run-reading" data-size={size} data-verdict={verdict}>
      <div className="run-box-row">
        <input
          className="run-number"
          data-main={isMain || undefined}
          type="text"
          inputMode="text"
          autoComplete="off"
          spellCheck={false}
          maxLength={60}
          aria-label={`${label}${unit.symbol === '' ? '' : `, ${unit.symbol}`}`}
          aria-describedby={messageId}
          aria-invalid={problem !== null && problem.code !== 'empty'}
          value={text}
          onChange={(event) => field.type(event.currentTarget.value)}
          onFocus={(event) => {
            setHasFocus(true);
            event.currentTarget.select();
          }}
          onBlur={() => {
            setHasFocus(false);
            void field.commit();
          }}
          onKeyDown={(event) => {
            const digit = ['1', '2', '3', '4'].findIndex((key) => isAltKey(event, key));
            const meaning = meanings[digit];
            const suggestion = suggestions[digit];
            const chosen = isAsking ? choices[digit] : undefined;
            if (chosen !== undefined) chooseInstrument(chosen.instrumentId);
            else if (meaning !== undefined) takeMeaning(meaning);
            else if (suggestion !== undefined) void takeSuggestion(suggestion);
            else if (isAltKey(event, 'U') && units.length > 1) changeUnit();
            else if (isAltKey(event, 'X') && onLeaveOut !== undefined) {
              event.stopPropagation();
              onLeaveOut();
            } else if (event.key === 'Enter') enter();
            else return;
            event.preventDefault();
          }}
        />
        {unit.symbol === '' ? null : units.length === 1 ? (
          <span className="run-unit">{unit.symbol}</span>
        ) : (
          <button
            type="button"
            className="run-unit-button"
            aria-label={`Unit ${unit.symbol}, switch`}
            aria-keyshortcuts="Alt+U"
            tabIndex={size === 'cell' ? -1 : 0}
            onClick={changeUnit}
          >
            {unit.symbol}
          </button>
        )}
        {size === 'large' ? (
          <>
            {verdict === undefined ? null : <VerdictMark verdict={verdict} size="lg" />}
            {reading?.valueOwn === null && !isChanged ? (
              <span className="run-left-out">not measured: {reading.notMeasuredReason}</span>
            ) : null}
            <FieldSaved state={field.state} />
          </>
        ) : null}
      </div>
      <div id={messageId} className="run-reading-detail">
        {size === 'large' ? detail : <CellState findings={findings} reading={reading} save={field.state} />}
      </div>
      {size === 'large' ? (
        <WhoAndWith
          quantity={quantity}
          stored={isChanged || isRetyped ? null : (reading ?? null)}
          onChanged={() => {
            // Another instrument or another pair of eyes is another reading of the same digits.
            if (text.trim() === '') return;
            setIsRetyped(true);
            field.type(text);
          }}
        />
      ) : null}
      {size === 'cell' && hasFocus && detailPlace ? createPortal(detail, detailPlace) : null}
    </div>
  );

  function changeUnit(): void {
    switchUnit();
    // The same digits in another unit are another reading.
    if (text.trim() !== '') field.type(text);
  }
}

/** In a table there is room for a mark only; the words for it stand below the table. */
function CellState({
  findings,
  reading,
  save,
}: {
  readonly findings: readonly Finding[];
  readonly reading: RecordedReading | undefined;
  readonly save: SaveState;
}) {
  const verdict = heaviestVerdict(findings);
  return (
    <span className="run-cell-state">
      {verdict === undefined || verdict === 'no-limit-on-sheet' ? null : <VerdictMark verdict={verdict} />}
      {reading?.valueOwn === null ? <span className="run-left-out">not measured</span> : null}
      <FieldSaved state={save.kind === 'not-saved' ? { kind: 'not-saved', why: 'see below' } : save} />
    </span>
  );
}

function standingReading(
  readings: readonly RecordedReading[],
  itemKey: string,
  quantity: QuantityKey,
  sample: number,
): RecordedReading | undefined {
  return readings.findLast(
    (one) =>
      one.supersededById === null && one.itemKey === itemKey && one.quantity === quantity && one.sample === sample,
  );
}
