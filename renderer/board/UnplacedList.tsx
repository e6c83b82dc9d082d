/** Work without a day, what presses first; each can be carried onto the board by mouse or by keys. */
import type { UnplacedJob } from '../../electron/contract/board.ts';
import { durationWords } from '../form/readTime.ts';
import { pressWords } from '../jobs/pressWords.ts';
import { moveByArrows } from '../kit/arrowKeys.ts';
import { capital } from '../kit/capital.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { MakeSafeCount } from '../kit/MakeSafeCount.tsx';
import { NoticeCount } from '../kit/NoticeCount.tsx';
import { Panel } from '../kit/Panel.tsx';
import { JOB_KIND_WORDS } from '../kit/tradeWords.ts';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { RouteLink } from '../RouteLink.tsx';
import type { Carried } from './carryStore.ts';
import type { PointerCarry } from './usePointerCarry.ts';

export function UnplacedList({
  jobs,
  pointer,
  startOf,
  onPickUp,
}: {
  readonly jobs: readonly UnplacedJob[];
  readonly pointer: PointerCarry;
  /** Where a job picked up by keys begins on the board. */
  readonly startOf: (job: UnplacedJob) => Omit<Carried, 'by'> | null;
  readonly onPickUp: (job: UnplacedJob) => void;
}) {
  const { today } = useAppStatus();
  return (
    <Panel title={`Without a day (${jobs.length})`}>
      {jobs.length === 0 ? (
        <EmptyState title="Everything has a day">Jobs wait here until they are booked.</EmptyState>
      ) : (
        <>
          <p className="lo-faint" style={{ marginBlockStart: 0 }}>
            Drag onto the board, or press Enter: it begins where it fits, arrows move it, Enter puts it down.
          </p>
          <ul
            className="lo-board-waiting"
            aria-label="Work without a day"
            onKeyDown={(event) => moveByArrows(event, 'button')}
          >
            {jobs.map((job) => {
              const presses = pressWords(job, today);
              return (
                <li key={job.jobId}>
                  <button
                    type="button"
                    data-presses={presses.isUrgent}
                    data-job={job.jobId}
                    onClick={() => {
                      if (!pointer.hasJustCarried()) onPickUp(job);
                    }}
                    onPointerDown={(event) => {
                      const start = startOf(job);
                      if (start !== null) pointer.begin(event, start);
                    }}
                  >
                    <strong>
                      {capital(JOB_KIND_WORDS[job.kind])}: {job.customerName}
                    </strong>
                    <div>
                      {job.street}, {job.city} · {durationWords(job.suggestedMin)}
                    </div>
                    <MakeSafeCount count={job.openMakeSafes} /> <NoticeCount of={job.openNotices} />
                    {presses.words === null ? null : (
                      <div style={{ color: presses.isUrgent ? 'var(--lo-ochre)' : undefined }}>{presses.words}</div>
                    )}
                    {job.openReadiness.length === 0 ? null : (
                      <div className="lo-faint">
                        {job.openReadiness.length} readiness {job.openReadiness.length === 1 ? 'item' : 'items'} open:
                        can be pencilled in
                      </div>
                    )}
                  </button>
                  <RouteLink to="job" params={{ jobId: job.jobId }} className="lo-link-inline">
                    {job.kind === 'startup' ? 'readiness and details' : 'details'}
                    <span className="lo-hidden"> of {job.customerName}</span>
                  </RouteLink>
                </li>
              );
            })}
          </ul>
        </>
      )}
    </Panel>
  );
}
