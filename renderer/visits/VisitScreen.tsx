/** One visit: what, where and who; begin it, move it, or cancel it. */
import { Button, Group, Stack, TextInput } from '@mantine/core';
import { useState } from 'react';
import type { VisitRow } from '../../electron/contract/visits.ts';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { durationWords } from '../form/readTime.ts';
import { useDraftForm } from '../form/useDraftForm.ts';
import { Answer } from '../kit/Answer.tsx';
import { capital } from '../kit/capital.ts';
import { DateText } from '../kit/DateText.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Facts } from '../kit/Facts.tsx';
import { HistoryPanel } from '../kit/HistoryPanel.tsx';
import { LedTo } from '../kit/LedTo.tsx';
import { MakeSafeCount } from '../kit/MakeSafeCount.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { Screen } from '../kit/Screen.tsx';
import { CREW_ROLE_WORDS, JOB_KIND_WORDS, OUTCOME_WORDS, VISIT_STATE_WORDS } from '../kit/tradeWords.ts';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { OpenNoticeNote } from '../recalls/OpenNoticeNote.tsx';
import { goTo } from '../route.ts';
import { ServiceDueWords } from '../service/ServiceDueWords.tsx';
import { Shortcut } from '../shortcuts/Shortcut.tsx';
import { AgedReadinessNote } from './AgedReadinessNote.tsx';
import { AmendPanel } from './AmendPanel.tsx';
import { ChargePanel } from './ChargePanel.tsx';
import { HandoverSheet } from './HandoverSheet.tsx';
import { PencilledPanel } from './PencilledPanel.tsx';
import { SealPanel } from './SealPanel.tsx';
import { arrivalWords } from './VisitCard.tsx';
import { VisitFields } from './VisitFields.tsx';
import { visitFromForm, visitToForm } from './visitForm.ts';
import { mayBeWasted, WastedTripPanel } from './WastedTripPanel.tsx';

export function VisitScreen({ visitId }: { readonly visitId: string }) {
  const found = useOperation('visits.get', { visitId });
  const visit = found.state === 'ready' ? found.value : null;
  return (
    <Screen
      title={visit === null ? 'Visit' : `${visit.customerName}, ${visit.street}`}
      crumbs={
        <>
          <RouteLink to="visits" params={{ day: visit?.plannedOn ?? null }}>
            Diary
          </RouteLink>
          {visit === null ? null : (
            <>
              <RouteLink to="customer" params={{ customerId: visit.customerId }}>
                Customer
              </RouteLink>
              <RouteLink to="site" params={{ siteId: visit.siteId }}>
                Site
              </RouteLink>
            </>
          )}
        </>
      }
      action={visit === null ? undefined : <BeginButton visit={visit} />}
    >
      <Answer of={found}>
        {(row) => (
          <>
            <GoOnKey visit={row} />
            <Visit visit={row} />
          </>
        )}
      </Answer>
    </Screen>
  );
}

/** Moved or cancelled only before it has begun. */
function isAhead(visit: VisitRow): boolean {
  return visit.state === 'pencilled' || visit.state === 'planned';
}

/** Ended with something left to come back to. */
function isLeftOpen({ outcome }: VisitRow): boolean {
  return outcome !== null && outcome !== 'finished';
}

function BeginButton({ visit }: { readonly visit: VisitRow }) {
  const mayBegin = useHasRole('technician', 'owner');
  const begin = useAct('visits.begin');
  if (mayBegin && isLeftOpen(visit) && visit.jobs.some((job) => !job.isSealed))
    return <ReturnButton visitId={visit.visitId} />;
  if (!isAhead(visit) || !mayBegin) return null;
  const start = async () => {
    const reply = await begin.act({ visitId: visit.visitId });
    const runId = reply.ok ? reply.value.runs[0]?.runId : undefined;
    if (runId !== undefined) goTo('run', { visitId: visit.visitId, runId });
  };
  return (
    <Stack gap="xs">
      <Shortcut keys="b" label="Begin the visit" onPress={() => void start()} />
      <Button size="lg" loading={begin.isBusy} aria-keyshortcuts="b" onClick={() => void start()}>
        Begin the visit
      </Button>
      <ErrorText error={begin.error} />
    </Stack>
  );
}

/** One key back into the run that is under way, for whoever comes back to the laptop. */
function GoOnKey({ visit }: { readonly visit: VisitRow }) {
  const runId = visit.state === 'started' ? visit.jobs.find((job) => !job.isSealed)?.runId : null;
  if (runId === null || runId === undefined) return null;
  return (
    <Shortcut keys="r" label="Go on with the run" onPress={() => goTo('run', { visitId: visit.visitId, runId })} />
  );
}

function ReturnButton({ visitId }: { readonly visitId: string }) {
  const begin = useAct('visits.beginReturn');
  return (
    <Stack gap="xs">
      <Button
        size="lg"
        loading={begin.isBusy}
        onClick={async () => {
          const reply = await begin.act({ visitId });
          const runId = reply.ok ? reply.value.runs[0]?.runId : undefined;
          if (reply.ok && runId !== undefined) goTo('run', { visitId: reply.value.visitId, runId });
        }}
      >
        Begin the return trip
      </Button>
      <ErrorText error={begin.error} />
    </Stack>
  );
}

function Visit({ visit }: { readonly visit: VisitRow }) {
  const [isMoving, setIsMoving] = useState(false);
  const mayPlan = useHasRole('dispatcher', 'owner', 'technician');
  const mayCancel = useHasRole('dispatcher', 'owner');
  return (
    <>
      {visit.jobs.map(({ jobId, openNotices }) =>
        openNotices.map((notice) => <OpenNoticeNote key={`${jobId} ${notice.recallId}`} notice={notice} />),
      )}
      <Panel title="What there is to do">
        <PlainTable
          caption="Jobs of this visit"
          rows={visit.jobs}
          keyOf={(job) => job.jobId}
          columns={[
            {
              label: 'Job',
              cell: (job) => (
                <RouteLink to="job" params={{ jobId: job.jobId }}>
                  {capital(JOB_KIND_WORDS[job.kind])}
                </RouteLink>
              ),
            },
            {
              label: 'Appliance',
              cell: (job) => (
                <RouteLink to="appliance" params={{ applianceId: job.applianceId }}>
                  {job.model}, {job.serial}
                </RouteLink>
              ),
            },
            {
              label: 'Record',
              cell: (job) =>
                job.runId === null ? (
                  <span className="lo-faint">not begun</span>
                ) : (
                  <RouteLink to="run" params={{ visitId: visit.visitId, runId: job.runId }}>
                    {job.isSealed ? 'sealed record' : isLeftOpen(visit) ? 'look at the run' : 'go on with the run'}
                  </RouteLink>
                ),
            },
            {
              label: 'Paper',
              cell: (job) =>
                job.runId === null || job.isSealed ? (
                  ''
                ) : (
                  <RouteLink to="paper" params={{ visitId: visit.visitId, runId: job.runId }}>
                    print, or type in
                  </RouteLink>
                ),
            },
            { label: 'Open', cell: (job) => <MakeSafeCount count={job.openMakeSafes} /> },
          ]}
        />
        {visit.jobs
          .filter(({ kind }) => kind === 'service')
          .map(({ jobId, applianceId, serial }) => (
            <p key={jobId} style={{ margin: 0 }}>
              {serial}: <ServiceDueWords applianceId={applianceId} of="next" />
            </p>
          ))}
      </Panel>
      {visit.jobs.some(({ runId }) => runId !== null) ? (
        <Panel title="For the people who live there">
          <Stack gap="sm">
            {visit.jobs.map(({ jobId, runId, serial }) =>
              runId === null ? null : <HandoverSheet key={jobId} runId={runId} serial={serial} />,
            )}
          </Stack>
        </Panel>
      ) : null}
      {isAhead(visit) && mayPlan ? <AgedReadinessNote jobIds={visit.jobs.map(({ jobId }) => jobId)} /> : null}
      {visit.state === 'pencilled' && mayPlan && !isMoving ? <PencilledPanel visit={visit} /> : null}
      <Panel
        title="When and who"
        action={
          isAhead(visit) && mayPlan && !isMoving ? (
            <Button variant="default" onClick={() => setIsMoving(true)}>
              Move or change
            </Button>
          ) : undefined
        }
      >
        {isMoving ? (
          <LedTo>
            <MoveForm visit={visit} onDone={() => setIsMoving(false)} />
          </LedTo>
        ) : (
          <Facts
            facts={[
              ['Day', <DateText key="day" day={visit.plannedOn} weekday />],
              ['Arrive', arrivalWords(visit)],
              ['Time on site', durationWords(visit.durationMin)],
              [
                'State',
                `${VISIT_STATE_WORDS[visit.state]}${visit.outcome === null ? '' : `: ${OUTCOME_WORDS[visit.outcome]}`}`,
              ],
              ['Crew', visit.crew.map(({ name, role }) => `${name} (${CREW_ROLE_WORDS[role]})`).join(', ')],
            ]}
          />
        )}
      </Panel>
      <ChargePanel jobs={visit.jobs} />
      {mayPlan && mayBeWasted(visit) ? <WastedTripPanel visit={visit} /> : null}
      {isAhead(visit) && mayCancel ? <CancelPanel visitId={visit.visitId} /> : null}
      {visit.state === 'cancelled' && mayCancel ? <BringBackPanel visitId={visit.visitId} /> : null}
      {visit.jobs.map(({ runId, applianceId, isSealed, serial }) =>
        runId !== null && isSealed ? (
          <AmendPanel key={runId} runId={runId} applianceId={applianceId} serial={serial} />
        ) : null,
      )}
      {visit.jobs.some(({ isSealed }) => isSealed) ? <SealPanel visitId={visit.visitId} /> : null}
      <HistoryPanel entity="visits" entityId={visit.visitId} />
    </>
  );
}

function MoveForm({ visit, onDone }: { readonly visit: VisitRow; readonly onDone: () => void }) {
  const { visitId } = visit;
  // A visit on file is as firm as it is.
  const isReady = visit.state !== 'pencilled';
  const form = useDraftForm({
    draftKey: `visit.${visitId}`,
    operation: 'visits.update',
    initial: visitToForm(visit),
    toInput: (values, reader) => ({ visitId, baseRevision: visit.revision, ...visitFromForm(values, reader, isReady) }),
    onDone,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Save" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <VisitFields form={form} jobIds={visit.jobs.map(({ jobId }) => jobId)} isReady={isReady} />
    </DraftFormFrame>
  );
}

function BringBackPanel({ visitId }: { readonly visitId: string }) {
  const bringBack = useAct('visits.bringBack');
  return (
    <Panel title="Cancelled">
      <Stack gap="sm" align="start">
        <p style={{ margin: 0 }}>
          It is not in the diary. Brought back, day, people and jobs are as they were. Tell the customer.
        </p>
        <ErrorText error={bringBack.error} />
        <Button variant="default" loading={bringBack.isBusy} onClick={() => void bringBack.act({ visitId })}>
          Bring it back
        </Button>
      </Stack>
    </Panel>
  );
}

function CancelPanel({ visitId }: { readonly visitId: string }) {
  const cancel = useAct('visits.cancel');
  const [isAsking, setIsAsking] = useState(false);
  const [reason, setReason] = useState('');
  if (!isAsking) {
    return (
      <div>
        <Button variant="default" onClick={() => setIsAsking(true)}>
          Cancel the visit …
        </Button>
      </div>
    );
  }
  return (
    <Panel title="Cancel the visit">
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void cancel.act({ visitId, reason });
        }}
      >
        <Stack gap="sm" maw="44rem">
          <p style={{ margin: 0 }}>It leaves the diary; its jobs go back to “Jobs to book” and can be booked again.</p>
          <TextInput
            label="Why"
            description="Wasted trips are counted by reason."
            required
            autoComplete="off"
            value={reason}
            onChange={(event) => setReason(event.currentTarget.value)}
          />
          <ErrorText error={cancel.error} />
          <Group gap="sm">
            <Button type="submit" color="ember" loading={cancel.isBusy} disabled={reason.trim() === ''}>
              Cancel the visit
            </Button>
            <Button variant="default" onClick={() => setIsAsking(false)}>
              Leave it in the diary
            </Button>
          </Group>
        </Stack>
      </form>
    </Panel>
  );
}
