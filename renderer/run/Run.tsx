/** One run on screen: what the domain makes of it, where the technician is in it, and how anything is written into it. */
import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import type { SheetStep } from '../../domain/procedure/modelSheet.ts';
import type { ItemAddress } from '../../domain/procedure/progressTypes.ts';
import type { PastRun } from '../../domain/trend/pastRun.ts';
import type { InputOf, ReplyOf } from '../../electron/contract/index.ts';
import type { RunView } from '../../electron/contract/runs.ts';
import { useAppStatus, useSignedIn, useUnitSystem } from '../operations/AppStatus.tsx';
import { useCore } from '../operations/CoreAccess.tsx';
import { hashFor } from '../route.ts';
import { useUnsaved } from '../shell/LeaveGuard.tsx';
import { analyseRun, judgeView, type RunAnalysis } from './analyseRun.ts';
import { useHoldKeeper } from './clock/useHoldKeeper.ts';
import { useNow } from './clock/useNow.ts';
import { listDrafts } from './field/drafts.ts';
import { focusActive } from './focus/focusActive.ts';
import { isAltKey } from './focus/isAltKey.ts';
import { makeKeyBuffer, typedText } from './focus/keyBuffer.ts';
import { replayKeys } from './focus/replayKeys.ts';
import { RunHeader } from './header/RunHeader.tsx';
import { useInstruments } from './instruments/useInstruments.ts';
import { IntakeDialog } from './intake/IntakeDialog.tsx';
import { LeavePanel } from './leave/LeavePanel.tsx';
import { SidePanel } from './side/SidePanel.tsx';
import { StepStage } from './stage/StepStage.tsx';
import { itemAfter, itemBeside, itemToOpen, whereToResume } from './state/itemAfter.ts';
import { type HowLeft, RunContext, type RunContextValue, type WriteName } from './state/RunContext.ts';
import { useTakenUp } from './state/useTakenUp.ts';
import { type UnsavedBox, useUnsavedBoxes } from './state/useUnsavedBoxes.ts';
import { StepRail } from './steps/StepRail.tsx';
import { StopLayer } from './stop/StopLayer.tsx';
import { useMakeSafes } from './stop/useMakeSafes.ts';
import { useStops } from './stop/useStops.ts';
import { wordSource } from './words/wordSource.ts';

/** In place of a step's key in the address: the list of what is open before leaving. */
export const LEAVING = '~leaving';

export function Run({
  view: asked,
  past,
  stepKey,
}: {
  readonly view: RunView;
  /** Earlier visits to the same appliance, oldest first. */
  readonly past: readonly PastRun[];
  readonly stepKey: string | null;
}) {
  const now = useNow(1000);
  const [newest, showView] = useNewestView(asked);
  const view = useTakenUp(newest, past, now);
  const { visitId, runId } = view;
  const core = useCore();
  const queries = useQueryClient();
  const signedIn = useSignedIn();
  const unitSystem = useUnitSystem();
  const { today } = useAppStatus();
  const makeSafes = useMakeSafes(view);
  const findings = useMemo(() => judgeView(view, past), [view, past]);
  const analysis = useMemo(
    () => analyseRun(view, findings, { now, firingReleasedAt: makeSafes.lastClosedAt }),
    [view, findings, now, makeSafes.lastClosedAt],
  );
  const isSealed = view.sealedSha256 !== null;

  const [isLeaving, setIsLeaving] = useState(stepKey === LEAVING);
  const [active, setActive] = useState<ItemAddress | null>(() =>
    whereToResume(analysis.progress, stepKey, view.currentStepKey),
  );
  const stepTitle = analysis.steps.find((one) => one.key === active?.stepKey)?.title;
  const stops = useStops(view, analysis, makeSafes, stepTitle);
  const unsaved = useUnsavedBoxes(() => draftsLeftOver(runId, analysis.steps));
  const instruments = useInstruments(view, today);
  const [measuredById, chooseMeasuredBy] = useState(signedIn.staffId);
  const [keysTooEarly, setKeysTooEarly] = useState('');
  /** Beside what was held back: nothing more to say must not take away what is said already. */
  const sayNotTaken = useCallback((keys: string) => setKeysTooEarly((before) => keys + before), []);
  const [isTakingIn, setIsTakingIn] = useState(false);
  const [buffer] = useState(() => makeKeyBuffer(window));
  // What is on screen now, for what happens after an await.
  const latest = useRef({ view, active, isLeaving, releasedAt: makeSafes.lastClosedAt });
  latest.current = { view, active, isLeaving, releasedAt: makeSafes.lastClosedAt };
  useUnsaved(unsaved.list.length === 0 ? null : `Not saved yet: ${unsaved.list.map((box) => box.label).join(', ')}.`);

  const refresh = useCallback(async () => {
    const input = { visitId, runId };
    const queryKey = ['visits.getRun', input];
    const fresh = await core.call('visits.getRun', input);
    if (!fresh.ok) return;
    // An answer asked for before the write must not come in after this one.
    await queries.cancelQueries({ queryKey });
    latest.current = { ...latest.current, view: fresh.value };
    queries.setQueryData(queryKey, fresh.value);
    flushSync(() => showView(fresh.value));
  }, [core, queries, visitId, runId, showView]);

  const openStep = useCallback(
    async (wanted: string) => {
      const { view: shown } = latest.current;
      if (shown.sealedSha256 !== null || (shown.currentStepKey === wanted && shown.openedSteps.includes(wanted)))
        return;
      const reply = await core.call('visits.openStep', { visitId, runId, stepKey: wanted });
      if (reply.ok) await refresh();
    },
    [core, refresh, visitId, runId],
  );

  const write = useCallback(
    async <N extends WriteName>(name: N, input: InputOf<N>): Promise<ReplyOf<N>> => {
      // Looking at a step opens nothing; writing into it does.
      if ('stepKey' in input && name !== 'visits.openStep') await openStep(String(input.stepKey));
      const reply = await core.call(name, input);
      const refused: { readonly code: string } | null = reply.ok ? null : reply.error;
      if (refused?.code === 'run-was-left' && (await core.call('visits.takeUp', { visitId, runId })).ok) {
        const again = await core.call(name, input);
        await refresh();
        const stillRefused: { readonly code: string } | null = again.ok ? null : again.error;
        // What has grown too old may have shut the step meanwhile: what is said then is that the run was left.
        return stillRefused?.code === 'step-not-open' ? reply : again;
      }
      if (reply.ok) await refresh();
      return reply;
    },
    [core, openStep, refresh, visitId, runId],
  );

  const show = useCallback(
    (address: ItemAddress | null, leaving: boolean) => {
      // Leaving a box saves it; a box that goes away with its card is never told.
      if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
      flushSync(() => {
        setActive(address);
        setIsLeaving(leaving);
        setKeysTooEarly('');
      });
      const segment = leaving ? LEAVING : (address?.stepKey ?? null);
      window.history.replaceState(null, '', hashFor('run', { visitId, runId, stepKey: segment }));
    },
    [visitId, runId],
  );
  const goTo = useCallback((address: ItemAddress) => show(address, false), [show]);
  const goToLeaving = useCallback(() => show(latest.current.active, true), [show]);
  const analyseNow = useCallback((): RunAnalysis => {
    const { view: shown, releasedAt } = latest.current;
    return analyseRun(shown, judgeView(shown, past), { now: new Date().toISOString(), firingReleasedAt: releasedAt });
  }, [past]);
  const goToStep = useCallback(
    (wanted: string) => {
      const address = itemToOpen(analyseNow().progress, wanted);
      if (address !== null) goTo(address);
    },
    [analyseNow, goTo],
  );

  /** Saves with the keyboard held back, then moves; what was typed on meanwhile goes into the box moved to. */
  const saveWith = useCallback(
    async (save: () => Promise<boolean>, how: HowLeft, move: () => void): Promise<boolean> => {
      buffer.begin();
      setKeysTooEarly('');
      let isSaved = false;
      try {
        isSaved = await save();
        if (isSaved) move();
        return isSaved;
      } finally {
        const keys = buffer.end();
        // Typed for the box after this one: where the save was refused it has no place.
        const notTaken = isSaved && how === 'typed-on' ? replayKeys(keys, buffer) : typedText(keys);
        if (notTaken !== '') setKeysTooEarly(notTaken);
      }
    },
    [buffer],
  );

  const saveAndGoOn = useCallback(
    async (from: ItemAddress, save: () => Promise<boolean>, how: HowLeft = 'typed-on') => {
      await saveWith(save, how, () => {
        const next = itemAfter(analyseNow().progress, from);
        if (next === null) goToLeaving();
        else goTo(next);
        // Where a restart comes back to.
        if (next !== null && next.stepKey !== from.stepKey) void openStep(next.stepKey);
      });
    },
    [saveWith, analyseNow, goTo, goToLeaving, openStep],
  );
  const saveThen = useCallback(
    async (save: () => Promise<boolean>, move: () => void) => {
      await saveWith(save, 'typed-on', move);
    },
    [saveWith],
  );

  useLayoutEffect(() => {
    if (active !== null && !isLeaving) focusActive(active);
  }, [active, isLeaving]);

  // A link into this run while it is on screen. Moving within it writes the address itself, and is no news.
  const followed = useRef(stepKey);
  useEffect(() => {
    if (stepKey === null || stepKey === followed.current) return;
    followed.current = stepKey;
    if (stepKey === LEAVING) goToLeaving();
    else if (latest.current.isLeaving || stepKey !== latest.current.active?.stepKey) goToStep(stepKey);
  }, [stepKey, goToLeaving, goToStep]);

  // A step that is opened by resuming or by a click is remembered once it may be worked in, unless the burner is behind it.
  const currentStep = analysis.steps.find((step) => step.key === active?.stepKey);
  const mayOpen =
    currentStep !== undefined &&
    currentStep.needsClear === null &&
    analysis.progress.steps.find((step) => step.stepKey === currentStep.key)?.state === 'open';
  useEffect(() => {
    if (mayOpen && currentStep !== undefined) void openStep(currentStep.key);
  }, [mayOpen, currentStep, openStep]);

  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const { active: from } = latest.current;
      const by = isAltKey(event, 'ArrowDown') ? 1 : isAltKey(event, 'ArrowUp') ? -1 : null;
      if (isAltKey(event, 'L')) goToLeaving();
      else if (isAltKey(event, 'I')) setIsTakingIn(true);
      else if (by !== null && from !== null) {
        const beside = itemBeside(analyseNow().progress, from, by);
        if (beside !== null) goTo(beside);
      } else return;
      event.preventDefault();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [analyseNow, goTo, goToLeaving]);

  useHoldKeeper(view, write);

  const words = useMemo(() => wordSource(view.sheet, analysis.steps), [view.sheet, analysis.steps]);
  const value = useMemo<RunContextValue>(
    () => ({
      view,
      analysis,
      words,
      unitSystem,
      signedIn,
      isSealed,
      write,
      active,
      goTo,
      goToStep,
      goToLeaving,
      saveAndGoOn,
      saveThen,
      keysTooEarly,
      sayNotTaken,
      makeSafe: makeSafes.open,
      takeIn: () => setIsTakingIn(true),
      unsaved,
      instruments,
      past,
      measuredById,
      chooseMeasuredBy,
    }),
    [
      view,
      analysis,
      words,
      unitSystem,
      signedIn,
      isSealed,
      write,
      active,
      goTo,
      goToStep,
      goToLeaving,
      saveAndGoOn,
      saveThen,
      keysTooEarly,
      sayNotTaken,
      makeSafes.open,
      unsaved,
      instruments,
      past,
      measuredById,
    ],
  );

  return (
    <RunContext value={value}>
      <div className="run">
        <RunHeader makeSafes={makeSafes} onStop={stops.stopAndMakeSafe} isLeaving={isLeaving} />
        <div className="run-body">
          <StepRail isLeaving={isLeaving} />
          <main id="main" className="run-main" tabIndex={-1}>
            {isLeaving ? <LeavePanel /> : active === null ? null : <StepStage stepKey={active.stepKey} />}
          </main>
          {isLeaving ? null : <SidePanel />}
        </div>
      </div>
      {isTakingIn && !isSealed ? <IntakeDialog onClose={() => setIsTakingIn(false)} /> : null}
      <StopLayer makeSafes={makeSafes} stops={stops} />
    </RunContext>
  );
}

/** Typed before a reload or a kill and never saved: it is still in its box. */
function draftsLeftOver(runId: string, steps: readonly SheetStep[]): readonly UnsavedBox[] {
  return listDrafts(sessionStorage, runId).flatMap(({ itemKey, box }) => {
    const step = steps.find((one) => one.items.some((item) => item.key === itemKey));
    const item = step?.items.find((one) => one.key === itemKey);
    if (step === undefined || item === undefined) return [];
    return [{ stepKey: step.key, itemKey, box, label: item.label, why: 'Typed, and not saved yet: it is in its box.' }];
  });
}

/** What was asked for last, or what a write has brought since: the query's own news comes a moment too late to go on from. */
function useNewestView(asked: RunView): readonly [RunView, (view: RunView) => void] {
  const [shown, show] = useState(asked);
  const [seen, setSeen] = useState(asked);
  if (asked !== seen) {
    setSeen(asked);
    show(asked);
  }
  return [asked === seen ? shown : asked, show];
}
