/** Whose boiler this is and by which sheet, what waits are running, and the way to stop: always on screen, whatever the step. */
import { VisuallyHidden } from '@mantine/core';
import { useSignedIn } from '../../operations/AppStatus.tsx';
import { RouteLink } from '../../RouteLink.tsx';
import { SWITCH_KEY, useSwitchPerson } from '../../shell/useSwitchPerson.ts';
import { NoticeStrip } from '../notices/NoticeStrip.tsx';
import { PlateRatingStrip } from '../plate/PlateRatingStrip.tsx';
import { useRun } from '../state/RunContext.ts';
import type { MakeSafes } from '../stop/useMakeSafes.ts';
import { fuelWords } from '../words/reasonWords.ts';
import { EndedStrip } from './EndedStrip.tsx';
import { RunningWaits } from './RunningWaits.tsx';
import { TakenUpStrip } from './TakenUpStrip.tsx';
import { UnsavedStrip } from './UnsavedStrip.tsx';

export function RunHeader({
  makeSafes,
  onStop,
  isLeaving,
}: {
  readonly makeSafes: MakeSafes;
  readonly onStop: () => void;
  readonly isLeaving: boolean;
}) {
  const { view, isSealed, goToLeaving } = useRun();
  const { visit, record, sheet } = view;
  const person = useSignedIn();
  const { switchPerson } = useSwitchPerson();
  const openCount = record.openMakeSafes;
  return (
    <header className="run-header">
      <div className="run-header-row">
        <RouteLink to="visit" params={{ visitId: view.visitId }} className="run-way-out">
          <span aria-hidden="true">‹</span> Visit
        </RouteLink>
        <h1 className="run-who">
          {visit.customerName} <span className="run-who-where">{visit.street}</span>
        </h1>
        <p className="run-what">
          <b>{record.appliance.serial}</b>
          <span className="run-what-more">
            {' '}
            · {fuelWords(record.fuel)} · {sheet.title}, rev. {sheet.revision}
            {isSealed ? ' · sealed' : ''}
          </span>
        </p>
        <RunningWaits />
        {isLeaving ? null : (
          <button type="button" className="run-button run-narrow-only" onClick={goToLeaving}>
            Before leaving
          </button>
        )}
        <button type="button" className="run-person" aria-keyshortcuts={SWITCH_KEY} onClick={switchPerson}>
          <VisuallyHidden>Switch person; {person.name} is working:</VisuallyHidden> {person.initials}{' '}
          <kbd className="run-stop-key">{SWITCH_KEY.replace('+', ' ')}</kbd>
        </button>
        <button type="button" className="run-stop" aria-keyshortcuts="F8" onClick={onStop}>
          <StopShape /> Stop and make safe <kbd className="run-stop-key">F8</kbd>
        </button>
      </div>
      {openCount > 0 ? (
        <div className="run-strip" data-tone="ember" role="status">
          <strong>
            {openCount === 1 ? 'A make-safe is open' : `${openCount} make-safes are open`} on this appliance: it must
            not fire.
          </strong>
          <button type="button" className="run-button" onClick={makeSafes.show}>
            Show it
          </button>
        </div>
      ) : null}
      <NoticeStrip />
      <PlateRatingStrip />
      <EndedStrip />
      <TakenUpStrip />
      <UnsavedStrip />
    </header>
  );
}

/** A solid block with a bar across, as in the stop verdict. */
function StopShape() {
  return (
    <svg width="24" height="24" viewBox="0 0 20 20" aria-hidden="true" focusable="false">
      <path d="M2 2h16v16H2z" fill="none" stroke="currentColor" strokeWidth="2.2" />
      <path d="M5 8.2h10v3.6H5z" fill="currentColor" />
    </svg>
  );
}
