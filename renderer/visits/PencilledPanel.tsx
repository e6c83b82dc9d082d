/** A visit that is only pencilled in: what readiness still wants, or one press to make it firm. */
import { Button } from '@mantine/core';
import { READINESS_ITEMS } from '../../domain/procedure/readiness.ts';
import type { VisitRow } from '../../electron/contract/visits.ts';
import { Answer } from '../kit/Answer.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';

export function PencilledPanel({ visit }: { readonly visit: VisitRow }) {
  const jobs = useOperation('jobs.list', {
    unplannedOnly: false,
    jobIds: visit.jobs.map(({ jobId }) => jobId),
  });
  const confirm = useAct('visits.update');
  const { visitId, revision, plannedOn, plannedFrom, plannedTo, durationMin } = visit;
  const firmUp = () =>
    void confirm.act({
      visitId,
      baseRevision: revision,
      plannedOn,
      plannedFrom,
      plannedTo,
      durationMin,
      crew: visit.crew.map(({ staffId, role }) => ({ staffId, role })),
      isPencilled: false,
    });
  return (
    <Answer of={jobs}>
      {(all) => {
        const open = all.filter((job) => job.openReadiness.length > 0);
        const [first] = open;
        return first === undefined ? (
          <Note
            tone="fir"
            action={
              <Button loading={confirm.isBusy} onClick={firmUp}>
                Confirm the visit
              </Button>
            }
          >
            Pencilled in, and nothing that must be given is open any more.
            <ErrorText error={confirm.error} />
          </Note>
        ) : (
          <Note
            tone="caution"
            title="Pencilled in until the site is ready"
            action={
              <RouteLink to="job" params={{ jobId: first.jobId }}>
                Answer readiness
              </RouteLink>
            }
          >
            Still open: {[...new Set(open.flatMap((job) => job.openReadiness))].map(itemName).join('; ')}.
          </Note>
        );
      }}
    </Answer>
  );
}

function itemName(key: string): string {
  return READINESS_ITEMS.find((item) => item.key === key)?.label ?? key;
}
