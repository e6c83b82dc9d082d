/** The make-safe, open from the moment it was asked for: what to do, then what was done, and its closing by a licensed person. */
import { useState } from 'react';
import { BURNER_OFF } from '../../../domain/judgement/makeSafe.ts';
import { instantWords } from '../../kit/dayWords.ts';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { useRun } from '../state/RunContext.ts';
import { CloseMakeSafe } from './CloseMakeSafe.tsx';
import { Dialog } from './Dialog.tsx';
import { MakeSafeForm } from './MakeSafeForm.tsx';
import { MakeSafePhoto } from './MakeSafePhoto.tsx';
import type { Stop } from './stopsOf.ts';
import type { MakeSafes } from './useMakeSafes.ts';

export function MakeSafePanel({ makeSafes, stop }: { readonly makeSafes: MakeSafes; readonly stop: Stop | null }) {
  const { view } = useRun();
  const { list, opening, open } = makeSafes;
  const hide = () => {
    // Leaving a line saves it; one that goes away with the dialog is never told.
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    makeSafes.hide();
  };
  const stillOpen = list.filter((one) => one.closedAt === null);
  const [chosenId, setChosenId] = useState<string | null>(null);
  const shown = stillOpen.find((one) => one.makeSafeId === chosenId) ?? stillOpen.at(-1);
  const lines = stop?.makeSafe ?? BURNER_OFF;
  return (
    <Dialog label="Make safe" tone="ember" onEscape={hide}>
      <div className="run-stop-head">
        <h2>Make safe</h2>
        <button type="button" className="run-button" onClick={hide}>
          Back to the run <KeyHint keys="Esc" />
        </button>
      </div>
      <ol className="run-stop-steps" data-small>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ol>
      {opening === null ? null : (
        <p className="run-stop-what" role="alert">
          {opening.why === null ? 'Being recorded …' : `Not recorded: ${opening.why} Act all the same.`}{' '}
          {opening.why === null ? null : (
            <button type="button" className="run-button" onClick={() => open(opening.what)}>
              Record it again
            </button>
          )}
        </p>
      )}
      {stillOpen.length > 1 ? (
        <div className="run-box-row">
          {stillOpen.map((one) => (
            <button
              key={one.makeSafeId}
              type="button"
              className="run-button"
              aria-pressed={one === shown}
              onClick={() => setChosenId(one.makeSafeId)}
            >
              {one.what}
            </button>
          ))}
        </div>
      ) : null}
      {shown === undefined ? null : (
        <div key={shown.makeSafeId}>
          <p>
            <b>{shown.what}</b> · recorded {instantWords(shown.openedAt, view.record.site.timeZone)} by{' '}
            {shown.openedByName}
          </p>
          <MakeSafeForm makeSafe={shown} />
          <MakeSafePhoto makeSafe={shown} />
          <CloseMakeSafe makeSafe={shown} onClosed={hide} />
        </div>
      )}
    </Dialog>
  );
}
