/**
 * The box a number is typed into: unit shown and switchable, read and judged at every keystroke, saved when it is left.
 * What the judgement says stands in `detail`, below the box or in a place the caller keeps for it.
 */
import { type FocusEvent, useId, useMemo, useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import type { Finding, Suggestion } from '../../../domain/judgement/finding.ts';
import { isAbout } from '../../../domain/judgement/judgeRun.ts';
import { instrumentKindFor } from '../../../domain/judgement/proof/instrumentKindFor.ts';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import type { RecordedReading } from '../../../domain/procedure/runRecord.ts';
import { parseTyped } from '../../../domain/quantity/parseTyped.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { FieldSaved, type SaveState } from '../../kit/FieldSaved.tsx';
import { VerdictMark } from '../../kit/VerdictMark.tsx';
import { isAltKey } from '../focus/isAltKey.ts';
import { instrumentChoices, mustNameInstrument } from '../instruments/instrumentChoices.ts';
import { useRun } from '../state/RunContext.ts';
import { problemWords } from '../words/problemWords.ts';
import { saveErrorWords } from '../words/saveErrorWords.ts';
import { shownVerdict } from '../words/shownVerdict.ts';
import { mayTake } from '../words/suggestionWords.ts';
import { InstrumentAsk } from './InstrumentAsk.tsx';
import { LastTime } from './LastTime.tsx';
import { limitsFor } from './limitsFor.ts';
import { asksSomething, heaviestFirst, liveFindings } from './liveFindings.ts';
import { meaningsOf } from './meaningsOf.ts';
import { meaningText, type PickedMeaning } from './meaningText.ts';
import { Question } from './Question.tsx';
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
  /** Where the judgement is written instead of below the box, while it is the one that is looked at or asks something. */
  readonly detailPlace?: HTMLElement | null;
  readonly isLookedAt?: boolean;
  readonly onLookedAt?: () => void;
  /** Saves and goes wherever is next. `notTaken`: typed while a question was open, and meant for another box. */
  readonly onEnter: (commit: () => Promise<boolean>, notTaken: string) => void;
  readonly onLeaveOut?: () => void;
};

export function ReadingBox(props: ReadingBoxProps) {
  const {
    address,
    quantity,
    point,
    sample,
    label,
    size,
    isMain = false,
    detailPlace,
    isLookedAt = false,
    onLookedAt,
    onEnter,
    onLeaveOut,
  } = props;
  const { view, past, analysis, unitSystem, write, signedIn, instruments, measuredById } = useRun();
  const reading = standingReading(view.record.readings, address.itemKey, quantity, sample);
  const storedText = reading === undefined || reading.valueOwn === null ? '' : reading.typedText;
  const { unit, units, switchUnit } = useEntryUnit(
    quantity,
    unitSystem,
    reading?.valueOwn == null ? null : reading.typedUnit,
  );
  const messageId = useId();
  const [isRetyped, setIsRetyped] = useState(false);
  const latestView = useRef(view);
  latestView.current = view;
  const kind = instrumentKindFor(quantity);
  const inHand = instruments.inHand(kind);
  const instrumentId = inHand.state === 'chosen' ? inHand.instrumentId : null;
  const choices = instrumentChoices(quantity, instruments.list);
  const mustAsk = inHand.state === 'unknown' && mustNameInstrument(quantity) && choices.length > 0;
  const [held, setHeld] = useState<'instrument' | 'look' | 'refused' | null>(null);
  const input = useRef<HTMLInputElement>(null);
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
      past,
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
    past,
  ]);
  const problem = parsed !== null && !parsed.ok ? parsed.error : null;
  const meanings = meaningsOf(problem);
  // A table of samples asks once for all of them, below it.
  const suggestions = size === 'large' ? findings.flatMap((finding) => finding.suggestions).filter(mayTake) : [];
  const verdict = shownVerdict(findings);

  const takeMeaning = (meaning: PickedMeaning) => field.type(meaningText(meaning));
  const takeSuggestion = async (suggestion: Suggestion) => {
    // It is about stored readings: what is typed is stored first, and stays on file as the original.
    if (!(await field.commit())) return;
    const stored = standingReading(latestView.current.record.readings, address.itemKey, quantity, sample);
    if (stored === undefined) return;
    const { visitId, runId } = view;
    await write('visits.takeSuggestion', { visitId, runId, readingId: stored.readingId, code: suggestion.code });
  };

  const chooseInstrument = (chosenId: string | null, notTaken: string) => {
    if (kind === null) return;
    instruments.choose(kind, chosenId);
    latestInstrument.current = chosenId;
    goOn(notTaken);
  };
  /** Into the question which instrument it was, the number goes along unsaved: it is saved with the answer, once. */
  const saveWhenLeft = (event: FocusEvent) => {
    const to = event.relatedTarget;
    const staysHere = to === input.current || (to instanceof Element && to.closest('.run-question') !== null);
    if (held === 'instrument' && staysHere) return;
    void field.commit();
  };
  const enter = () => {
    if (isChanged && problem === null && mustAsk) setHeld('instrument');
    else goOn('');
  };
  /** One number is looked at before the next; samples are typed with the eyes on the analyser, and looked at afterwards. */
  const goOn = (notTaken: string) => {
    const needsLook = size === 'large' && isChanged && problem === null && asksSomething(findings);
    setHeld(needsLook ? 'look' : null);
    if (needsLook) void field.commit();
    else onEnter(commit, notTaken);
  };
  /** What was refused keeps the keyboard out of the box, so that digits meant for the next one do not run into it. */
  const commit = async (): Promise<boolean> => {
    const isSaved = await field.commit();
    if (!isSaved) setHeld('refused');
    return isSaved;
  };
  const backToBox = () => {
    setHeld(null);
    input.current?.focus();
  };
  const pickSuggestion = (index: number) => {
    const suggestion = suggestions[index];
    if (suggestion === undefined) return;
    void takeSuggestion(suggestion).then(backToBox);
  };

  const judgement = (
    <ReadingDetail
      quantity={quantity}
      limits={limitsFor(view.sheet, view.record.fuel, quantity, point)}
      unit={unit}
      findings={findings}
      problem={problem}
      isRefused={size === 'large' && field.state.kind === 'not-saved'}
      onMeaning={takeMeaning}
      onSuggestion={size === 'large' ? (suggestion) => void takeSuggestion(suggestion) : null}
    />
  );
  const detail =
    held === 'instrument' ? (
      <Question
        key="instrument"
        goOnWords="goes on without one: the reading is then not proven."
        onPick={(index) => {
          const chosen = choices[index];
          if (chosen !== undefined) chooseInstrument(chosen.instrumentId, '');
        }}
        onGoOn={(notTaken) => chooseInstrument(null, notTaken)}
        onBack={backToBox}
        onBlur={saveWhenLeft}
        mustBeRead
      >
        <InstrumentAsk choices={choices} onChoose={(chosenId) => chooseInstrument(chosenId, '')} />
      </Question>
    ) : held === 'look' ? (
      <Question
        key="look"
        goOnWords="leaves it as it is and goes on."
        onPick={pickSuggestion}
        onGoOn={(notTaken) => {
          setHeld(null);
          onEnter(commit, notTaken);
        }}
        onBack={backToBox}
      >
        {judgement}
      </Question>
    ) : held === 'refused' ? (
      <Question
        key="refused"
        // The store may take it the next time; a number that cannot be never will.
        goOnWords={problem === null ? 'tries again.' : null}
        onPick={(index) => {
          const meaning = meanings[index];
          if (meaning !== undefined) takeMeaning(meaning);
          backToBox();
        }}
        onGoOn={enter}
        onBack={backToBox}
      >
        {judgement}
      </Question>
    ) : (
      judgement
    );
  return (
    <div className="run-reading" data-size={size} data-verdict={verdict}>
      <div className="run-box-row">
        <input
          ref={input}
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
          // Not onChange: React keeps it back where the same digits are typed again, and to read 0 ppm once more is a reading.
          onInput={(event) => {
            setHeld(null);
            field.type(event.currentTarget.value);
          }}
          onFocus={(event) => {
            onLookedAt?.();
            event.currentTarget.select();
          }}
          onBlur={saveWhenLeft}
          onKeyDown={(event) => {
            const digit = ['1', '2', '3', '4'].findIndex((key) => isAltKey(event, key));
            const meaning = meanings[digit];
            const suggestion = suggestions[digit];
            if (meaning !== undefined) takeMeaning(meaning);
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
            <LastTime quantity={quantity} point={point} />
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
      {size === 'cell' && (isLookedAt || held !== null) && detailPlace ? createPortal(detail, detailPlace) : null}
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
  const verdict = shownVerdict(findings);
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
