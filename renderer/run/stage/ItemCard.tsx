/** The item that is worked on, large: what is asked, how, what it blocks, its boxes or answers, and "not possible, because …". */
import { type ReactNode, useState } from 'react';
import type { StepItem } from '../../../domain/procedure/modelSheet.ts';
import type { ItemProgress, ItemReason } from '../../../domain/procedure/progressTypes.ts';
import { assertNever } from '../../../domain/result.ts';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { NumberPad } from '../field/NumberPad.tsx';
import { isAltKey, plainKey } from '../focus/isAltKey.ts';
import { useKeys } from '../focus/useKeys.ts';
import { AnswerHistory } from '../items/AnswerHistory.tsx';
import { ChooseItem } from '../items/ChooseItem.tsx';
import { ConfirmItem } from '../items/ConfirmItem.tsx';
import { HoldItem } from '../items/HoldItem.tsx';
import { LockoutsItem } from '../items/LockoutsItem.tsx';
import { NoteItem } from '../items/NoteItem.tsx';
import { NotPossible } from '../items/NotPossible.tsx';
import { PartsItem } from '../items/PartsItem.tsx';
import { PhotoItem } from '../items/PhotoItem.tsx';
import { ReadItem } from '../items/ReadItem.tsx';
import { SeriesItem } from '../items/SeriesItem.tsx';
import { SignOffItem } from '../items/SignOffItem.tsx';
import { TuningItem } from '../items/TuningItem.tsx';
import { WitnessItem } from '../items/WitnessItem.tsx';
import { useRun } from '../state/RunContext.ts';
import { blockWords, reasonWords } from '../words/reasonWords.ts';

export function ItemCard({ item, progress }: { readonly item: StepItem; readonly progress: ItemProgress }) {
  const { words, keysTooEarly } = useRun();
  const [isLeavingOut, setLeavingOut] = useState(false);
  const mayLeaveOut = item.mayBeNotPossible && item.kind !== 'sign-off';
  const waits = progress.state === 'waiting';
  const reasons = progress.because.filter((reason) => !SAID_ELSEWHERE.includes(reason.code));
  const keys = useKeys<HTMLDivElement>((event) => {
    if (!mayLeaveOut || isLeavingOut) return;
    if (!isAltKey(event, 'X') && plainKey(event) !== 'x') return;
    // In a table of samples each box says for itself that it was not measured.
    if (event.target instanceof Element && event.target.closest('[data-leaves-out-by-box]') !== null) return;
    event.preventDefault();
    setLeavingOut(true);
  });
  return (
    <div ref={keys} className="run-card" data-card={item.key} tabIndex={-1}>
      <div className="run-card-head">
        <h3 className="run-card-label" id={`label-${item.key}`}>
          {item.label}
        </h3>
        <span className="run-card-blocks">
          {progress.blocks.length === 0 ? '' : `blocks ${progress.blocks.map(blockWords).join(', ')}`}
        </span>
        {mayLeaveOut && !isLeavingOut ? (
          <button type="button" className="run-quiet-button" onClick={() => setLeavingOut(true)}>
            <span>{item.kind === 'read' ? 'Not measured' : 'Not possible'} …</span> <KeyHint keys="Alt+X" />
          </button>
        ) : null}
      </div>
      {item.hint === undefined ? null : <p className="run-card-hint">{item.hint}</p>}
      {reasons.length === 0 ? null : (
        <p className="run-card-why" role="status">
          {reasons.map((reason) => reasonWords(reason, words)).join('; ')}
        </p>
      )}
      {keysTooEarly === '' ? null : (
        <p className="run-card-why" role="alert">
          “{keysTooEarly}” was pressed before this was on screen: not taken.
        </p>
      )}
      {waits ? null : <ItemBody item={item} progress={progress} />}
      {item.kind === 'read' || item.kind === 'series' ? <NumberPad /> : null}
      <AnswerHistory item={item} />
      {isLeavingOut ? <NotPossible item={item} address={progress} onCancel={() => setLeavingOut(false)} /> : null}
    </div>
  );
}

/** Plain to see in the item itself. */
const SAID_ELSEWHERE: readonly ItemReason['code'][] = [
  'not-answered',
  'finding',
  'hold-running',
  'post-run-wait',
  'tuning-running',
  'tuning-interrupted',
  'too-few-samples',
  'firing-point-not-reached',
];

function ItemBody({ item, progress }: { readonly item: StepItem; readonly progress: ItemProgress }): ReactNode {
  switch (item.kind) {
    case 'confirm':
      return <ConfirmItem item={item} address={progress} />;
    case 'choose':
      return <ChooseItem item={item} address={progress} />;
    case 'note':
      return <NoteItem item={item} address={progress} />;
    case 'read':
      return <ReadItem item={item} address={progress} />;
    case 'series':
      return <SeriesItem item={item} progress={progress} />;
    case 'hold':
      return <HoldItem item={item} progress={progress} />;
    case 'tuning':
      return <TuningItem item={item} progress={progress} />;
    case 'parts':
      return <PartsItem item={item} address={progress} />;
    case 'lockouts':
      return <LockoutsItem item={item} address={progress} />;
    case 'photo':
      return <PhotoItem item={item} address={progress} />;
    case 'witness':
      return <WitnessItem item={item} address={progress} />;
    case 'sign-off':
      return <SignOffItem item={item} address={progress} />;
    default:
      return assertNever(item);
  }
}
