/** One job on its way to a visit: the readiness call, then who goes when. */
import { Button, Checkbox } from '@mantine/core';
import type { OutputOf } from '../../electron/contract/index.ts';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { Answer } from '../kit/Answer.tsx';
import { capital } from '../kit/capital.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { Screen } from '../kit/Screen.tsx';
import { JOB_KIND_WORDS, OUTCOME_WORDS } from '../kit/tradeWords.ts';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { replaceWith } from '../route.ts';
import { useShortcut } from '../shortcuts/Shortcuts.tsx';
import { VisitFields } from '../visits/VisitFields.tsx';
import { emptyVisit, type VisitForm, visitFromForm } from '../visits/visitForm.ts';
import { CancelledVisits } from './CancelledVisits.tsx';
import { PlanningPanel } from './PlanningPanel.tsx';
import { ReadinessPanel } from './ReadinessPanel.tsx';

type Job = OutputOf<'jobs.list'>[number];

export function JobScreen({ jobId }: { readonly jobId: string }) {
  const jobs = useOperation('jobs.list', { unplannedOnly: false, jobIds: [jobId] });
  const mayBook = useHasRole('dispatcher', 'owner', 'technician');
  useShortcut('b', 'Book the visit', goToBooking);
  const job = jobs.state === 'ready' ? jobs.value[0] : undefined;
  return (
    <Screen
      title={job === undefined ? 'Job' : capital(`${JOB_KIND_WORDS[job.kind]}: ${job.maker} ${job.model}`)}
      crumbs={
        <>
          <RouteLink to="jobs" params={{}}>
            Jobs to book
          </RouteLink>
          {job === undefined ? null : (
            <>
              <RouteLink to="appliance" params={{ applianceId: job.applianceId }}>
                Appliance {job.serial}
              </RouteLink>
              {job.siteId === null ? null : (
                <RouteLink to="site" params={{ siteId: job.siteId }}>
                  {job.street}, {job.city}
                </RouteLink>
              )}
            </>
          )}
        </>
      }
      action={
        job !== undefined && job.visitId === null && mayBook ? (
          <Button variant="default" onClick={goToBooking}>
            Book the visit ↓
          </Button>
        ) : undefined
      }
    >
      <Answer of={jobs}>
        {(all) =>
          job === undefined ? (
            <Note tone="caution">This job is not on file any more.</Note>
          ) : (
            <Job
              job={job}
              others={all.filter((row) => row.siteId === job.siteId && row.jobId !== jobId && row.visitId === null)}
            />
          )
        }
      </Answer>
    </Screen>
  );
}

function Job({ job, others }: { readonly job: Job; readonly others: readonly Job[] }) {
  const readiness = useOperation('jobs.getReadiness', { jobId: job.jobId }, { isWanted: job.kind === 'startup' });
  const mayBook = useHasRole('dispatcher', 'owner', 'technician');
  return (
    <>
      {job.visitId === null ? null : (
        <Note
          tone="fir"
          action={
            <RouteLink to="visit" params={{ visitId: job.visitId }}>
              Open the visit
            </RouteLink>
          }
        >
          This job is booked.
        </Note>
      )}
      {job.returnBecause === null ? null : (
        <Note tone="caution" title={`Return trip: the visit before ended “${OUTCOME_WORDS[job.returnBecause]}”`}>
          What was recorded is kept. The next visit takes the run up again and asks once more for what has grown too
          old.
        </Note>
      )}
      {job.kind === 'startup' ? (
        <Answer of={readiness}>{(given) => <ReadinessPanel readiness={given} siteId={job.siteId} />}</Answer>
      ) : null}
      <CancelledVisits jobId={job.jobId} />
      {job.visitId === null && mayBook ? <BookingPanel job={job} others={others} /> : null}
      {mayBook ? <PlanningPanel jobId={job.jobId} /> : null}
    </>
  );
}

const BOOKING_ID = 'booking';

/** The readiness list is long: one key leads past it. */
function goToBooking() {
  document.querySelector<HTMLElement>(`#${BOOKING_ID} input`)?.focus();
}

type BookingForm = VisitForm & { readonly note: string; readonly together: readonly string[] };

function BookingPanel({ job, others }: { readonly job: Job; readonly others: readonly Job[] }) {
  const planning = useOperation('jobs.getPlanning', { jobId: job.jobId });
  return (
    <Answer of={planning}>
      {({ suggestedMin }) => <Booking job={job} others={others} suggestedMin={suggestedMin} />}
    </Answer>
  );
}

function Booking({
  job,
  others,
  suggestedMin,
}: {
  readonly job: Job;
  readonly others: readonly Job[];
  readonly suggestedMin: number;
}) {
  const jobsWith = (together: readonly string[]): readonly Job[] => [
    job,
    ...others.filter(({ jobId }) => together.includes(jobId)),
  ];
  const isReadyWith = (together: readonly string[]): boolean =>
    jobsWith(together).every((one) => one.openReadiness.length === 0);
  const form = useDraftForm<BookingForm, 'visits.book'>({
    draftKey: `book.${job.jobId}`,
    operation: 'visits.book',
    initial: { ...emptyVisit(suggestedMin), note: '', together: [] },
    toInput: (values, reader) => ({
      ...visitFromForm(values, reader, isReadyWith(values.together)),
      jobIds: [job.jobId, ...values.together],
      note: reader.optional(values.note),
    }),
    onDone: ({ visitId }) => replaceWith('visit', { visitId }),
  });
  const { together } = form.values;
  return (
    <div id={BOOKING_ID}>
      <Panel title="Book the visit">
        <DraftFormFrame form={form} submitLabel="Book it" failure={<ErrorText error={form.error} />}>
          {others.length === 0 ? null : (
            <fieldset className="lo-fieldset">
              <legend>Waiting at the same site: do them in one trip?</legend>
              {others.map((other) => (
                <Checkbox
                  key={other.jobId}
                  size="md"
                  py="xs"
                  label={`${JOB_KIND_WORDS[other.kind]}: ${other.maker} ${other.model}, ${other.serial}`}
                  checked={together.includes(other.jobId)}
                  onChange={(event) =>
                    form.set({
                      together: event.currentTarget.checked
                        ? [...together, other.jobId]
                        : together.filter((jobId) => jobId !== other.jobId),
                    })
                  }
                />
              ))}
            </fieldset>
          )}
          <VisitFields
            form={form}
            jobIds={[job.jobId, ...together]}
            isReady={isReadyWith(together)}
            aged={jobsWith(together).flatMap((one) => one.agedReadiness)}
          />
          <TextField form={form} name="note" label="Note for the crew" lines={2} />
        </DraftFormFrame>
      </Panel>
    </div>
  );
}
