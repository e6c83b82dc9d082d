/** When the laptop could not go on: printing what is left, and typing in what was written, step by step in the sheet's order. */
import { Button, Group, NativeSelect } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import { instrumentKindFor } from '../../domain/judgement/proof/instrumentKindFor.ts';
import type { RunView } from '../../electron/contract/runs.ts';
import { DayInput } from '../form/DayField.tsx';
import { readDay } from '../form/FormReader.ts';
import { Answer } from '../kit/Answer.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { downloadAttachment } from '../kit/downloadFile.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { errorWords } from '../kit/errorWords.ts';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useAppStatus, useSignedIn, useUnitSystem } from '../operations/AppStatus.tsx';
import { useCore } from '../operations/CoreAccess.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { analyseRun, judgeView } from '../run/analyseRun.ts';
import { useInstruments } from '../run/instruments/useInstruments.ts';
import { dayOfInstant } from '../run/words/dayOfInstant.ts';
import { lockWords } from '../run/words/reasonWords.ts';
import { wordSource } from '../run/words/wordSource.ts';
import './paper.css';
import { PaperPhoto } from './PaperPhoto.tsx';
import { PaperSlotForm } from './PaperSlotForm.tsx';
import { type PaperSlot, paperSlots, type Written } from './paperSlots.ts';

export function PaperScreen({ visitId, runId }: { readonly visitId: string; readonly runId: string }) {
  const found = useOperation('visits.getRun', { visitId, runId });
  return (
    <Screen
      title="On paper"
      crumbs={
        <>
          <RouteLink to="visit" params={{ visitId }}>
            Visit
          </RouteLink>
          <RouteLink to="run" params={{ visitId, runId }}>
            Run
          </RouteLink>
        </>
      }
      action={<PrintButton visitId={visitId} runId={runId} />}
    >
      <Answer of={found}>{(view) => <FromPaper view={view} />}</Answer>
    </Screen>
  );
}

function PrintButton({ visitId, runId }: { readonly visitId: string; readonly runId: string }) {
  const core = useCore();
  const print = useAct('paper.print');
  return (
    <div>
      <Button
        variant="default"
        loading={print.isBusy}
        onClick={async () => {
          const reply = await print.act({ visitId, runId });
          if (reply.ok) await downloadAttachment(core, reply.value.attachmentId);
        }}
      >
        Print what is left
      </Button>
      <ErrorText error={print.error} />
    </div>
  );
}

function FromPaper({ view }: { readonly view: RunView }) {
  const core = useCore();
  const { today } = useAppStatus();
  const signedIn = useSignedIn();
  const unitSystem = useUnitSystem();
  const transcribe = useAct('paper.transcribe');
  const instruments = useInstruments(view, today);
  const [byId, setById] = useState(signedIn.staffId);
  const [lastAt, setLastAt] = useState('');
  const [refused, setRefused] = useState<{ readonly slotKey: string; readonly why: string } | null>(null);
  const list = useRef<HTMLDivElement>(null);
  // The day work began, or was taken up again: a visit is not always made on the day it was planned for.
  const beganAt = view.reopenedAt ?? view.record.startedAt;
  const [dayText, setDayText] = useState(() =>
    dayWords(beganAt === null ? view.visit.plannedOn : dayOfInstant(beganAt, view.record.site.timeZone)),
  );
  const on = readDay(dayText);
  const [listsToGoOn, setListsToGoOn] = useState<ReadonlySet<string>>(new Set());
  const analysis = analyseRun(view, judgeView(view), { now: new Date().toISOString(), firingReleasedAt: null });
  const words = wordSource(view.sheet, analysis.steps);
  const steps = analysis.progress.steps
    .map((progress) => ({ progress, step: analysis.steps.find(({ key }) => key === progress.stepKey) }))
    .flatMap(({ progress, step }) =>
      step === undefined ? [] : [{ progress, step, slots: paperSlots(step, progress, view, unitSystem, listsToGoOn) }],
    )
    .filter(({ slots }) => slots.length > 0);
  const open = steps.find(({ progress }) => progress.state !== 'locked');
  const lines = open?.slots.map(({ slotKey }) => slotKey).join(' ') ?? '';
  const [kept, setKept] = useState(0);
  /** Where among the lines one was kept, until the list is there without it. */
  const place = useRef<number | null>(null);
  const linesBefore = useRef(lines);
  useEffect(() => {
    if (kept === 0 || place.current === null) return;
    // On with the line that has taken the place of the one that was kept.
    const forms = [...(list.current?.querySelectorAll('form') ?? [])];
    const next = forms[Math.min(place.current, forms.length - 1)];
    next?.querySelector<HTMLElement>('input:not([hidden]), select, button')?.focus();
    if (lines !== linesBefore.current) place.current = null;
  }, [kept, lines]);

  if (view.sealedSha256 !== null)
    return <Note>The record is sealed: a correction is an amendment, on the visit’s own screen.</Note>;
  const { visitId, runId } = view;
  const openStep = async (stepKey: string): Promise<string | null> => {
    if (view.openedSteps.includes(stepKey)) return null;
    const opened = await core.call('visits.openStep', { visitId, runId, stepKey });
    return opened.ok ? null : errorWords(opened.error);
  };
  const keep = async (stepKey: string, slot: PaperSlot, written: Written, at: string): Promise<boolean> => {
    const refuse = (why: string) => {
      setRefused({ slotKey: slot.slotKey, why });
      return false;
    };
    setRefused(null);
    if (!on.ok || on.day === null) return refuse('Say first on which day it was written.');
    const locked = await openStep(stepKey);
    if (locked !== null) return refuse(locked);
    const { itemKey } = slot;
    const reply = await transcribe.act({ visitId, runId, stepKey, itemKey, on: on.day, byId, written });
    if (!reply.ok) return refuse(errorWords(reply.error));
    if (written.kind === 'part' || written.kind === 'lockout') {
      // The same line again, for the next one on the list.
      setListsToGoOn((lists) => new Set([...lists, itemKey]));
      setLastAt(at);
    } else moveOn(slot, at);
    return true;
  };
  const moveOn = (slot: PaperSlot, at: string) => {
    place.current = open?.slots.findIndex(({ slotKey }) => slotKey === slot.slotKey) ?? 0;
    linesBefore.current = lines;
    setLastAt(at);
    setKept((count) => count + 1);
  };
  return (
    <>
      <Note tone="caution">
        What is typed here is marked as copied from paper, in the record and in the packet, with who wrote it and who
        typed it. A wait copied from paper is not proven by the app.
      </Note>
      <Panel title="The paper">
        <Group gap="md" align="start">
          <DayInput
            label="Written on"
            text={dayText}
            onText={setDayText}
            error={on.ok && on.day !== null ? undefined : 'Example: 4 Jul 2026'}
          />
          <NativeSelect
            label="Written by"
            value={byId}
            data={view.people.map(({ staffId, name }) => ({ value: staffId, label: name }))}
            onChange={(event) => setById(event.currentTarget.value)}
          />
        </Group>
      </Panel>
      <div ref={list}>
        {open === undefined ? (
          <Panel title="Nothing more to type in">
            <p style={{ margin: 0 }}>What is still open can only be done in the run, or waits for something there.</p>
          </Panel>
        ) : (
          <Panel title={open.step.title}>
            {open.slots.map((slot) => (
              <PaperSlotForm
                key={slot.slotKey}
                lineKey={`${runId}.${slot.slotKey}`}
                slot={slot}
                unitSystem={unitSystem}
                instruments={instruments.list}
                defaults={{
                  at: lastAt,
                  instrumentFor: (box) => {
                    if (box.kind !== 'amount') return '';
                    const inHand = instruments.inHand(instrumentKindFor(box.quantity));
                    return inHand.state === 'chosen' ? (inHand.instrumentId ?? '') : '';
                  },
                }}
                error={refused?.slotKey === slot.slotKey ? refused.why : null}
                onKeep={(written, values) => keep(open.step.key, slot, written, values['at'] ?? values['to'] ?? lastAt)}
                onListDone={
                  listsToGoOn.has(slot.itemKey)
                    ? () => {
                        setListsToGoOn((lists) => new Set([...lists].filter((key) => key !== slot.itemKey)));
                        moveOn(slot, lastAt);
                      }
                    : null
                }
              >
                {slot.isPhoto === true ? (
                  <PaperPhoto
                    view={view}
                    stepKey={open.step.key}
                    itemKey={slot.itemKey}
                    label={slot.label}
                    onOpenStep={() => openStep(open.step.key)}
                    onAttached={() => moveOn(slot, lastAt)}
                  />
                ) : null}
              </PaperSlotForm>
            ))}
          </Panel>
        )}
      </div>
      {steps.length > 1 || (open === undefined && steps.length > 0) ? (
        <Panel title="After that">
          <ul style={{ margin: 0 }}>
            {steps
              .filter((one) => one !== open)
              .map(({ step, progress, slots }) => (
                <li key={step.key}>
                  {step.title}: {slots.length === 1 ? 'one line' : `${slots.length} lines`}
                  {progress.lockedBecause.length === 0
                    ? ''
                    : ` – ${progress.lockedBecause.map((lock) => lockWords(lock, words)).join(' ')}`}
                </li>
              ))}
          </ul>
        </Panel>
      ) : null}
    </>
  );
}
