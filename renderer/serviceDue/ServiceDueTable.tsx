/** Lines of what falls due: when and how sure, whom to call, and the step to a booked visit. */
import { Button, Group } from '@mantine/core';
import type { ServiceDueRow } from '../../electron/contract/dues.ts';
import { DateText } from '../kit/DateText.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { useAppStatus, useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { RouteLink } from '../RouteLink.tsx';
import { goTo } from '../route.ts';
import { WhyDue } from '../service/WhyDue.tsx';
import { daysToLatestTone, daysToLatestWords } from './dueWords.ts';

export function ServiceDueTable({ rows }: { readonly rows: readonly ServiceDueRow[] }) {
  return (
    <PlainTable
      caption="What falls due"
      rows={rows}
      keyOf={({ applianceId, kind }) => `${applianceId} ${kind}`}
      columns={[
        {
          label: 'Appliance',
          cell: ({ applianceId, maker, model, serial }) => (
            <RouteLink to="appliance" params={{ applianceId }}>
              {maker} {model}, {serial}
            </RouteLink>
          ),
        },
        { label: 'Due', cell: (row) => <Due row={row} /> },
        {
          label: 'Customer',
          cell: ({ customerName, phone }) => (
            <>
              {customerName}
              {phone === null ? null : <div>{phone}</div>}
            </>
          ),
        },
        {
          label: 'Where',
          cell: ({ street, postcode, city }) => (
            <>
              {street}
              <div className="lo-faint">{[postcode, city].filter(Boolean).join(' ')}</div>
            </>
          ),
        },
        { label: 'Next step', cell: (row) => (row.kind === 'service' ? <Booking row={row} /> : <Contact row={row} />) },
      ]}
    />
  );
}

function Due({ row }: { readonly row: ServiceDueRow }) {
  return (
    <>
      <DateText day={row.dueOn} weekday />
      <div>
        <span className="lo-verdict" data-tone={daysToLatestTone(row.daysToLatest)}>
          {daysToLatestWords(row.daysToLatest)}
        </span>
      </div>
      <div className="lo-faint">
        {row.kind === 'service' ? <WhyDue demands={row.demands} /> : 'Common practice in the first year.'}
      </div>
    </>
  );
}

function Booking({ row }: { readonly row: ServiceDueRow }) {
  const open = useAct('jobs.open');
  const mayBook = useHasRole('dispatcher', 'owner', 'technician');
  if (row.visitId !== null) {
    return (
      <>
        <RouteLink to="visit" params={{ visitId: row.visitId }}>
          {row.bookedOn === null ? 'Booked' : `Booked ${dayWords(row.bookedOn)}`}
        </RouteLink>
        {row.bookedOn !== null && row.bookedOn > row.latestOn ? (
          <div style={{ color: 'var(--lo-ember)', fontWeight: 600 }}>after the latest day</div>
        ) : null}
      </>
    );
  }
  if (row.jobId !== null) {
    return (
      <RouteLink to="job" params={{ jobId: row.jobId }}>
        Opened, book it
      </RouteLink>
    );
  }
  if (!mayBook) return null;
  const book = async () => {
    const reply = await open.act({ applianceId: row.applianceId, kind: 'service', note: null });
    if (reply.ok) goTo('job', { jobId: reply.value.jobId });
  };
  return (
    <>
      <Button
        variant="default"
        loading={open.isBusy}
        aria-label={`Book the service of ${row.serial}`}
        onClick={() => void book()}
      >
        Book
      </Button>
      <ErrorText error={open.error} />
    </>
  );
}

function Contact({ row }: { readonly row: ServiceDueRow }) {
  const close = useAct('serviceDue.closeContact');
  const { today } = useAppStatus();
  const mayClose = useHasRole('dispatcher', 'owner', 'technician');
  if (!mayClose || row.kind === 'service') return null;
  const { applianceId, kind } = row;
  const closeAs = (outcome: 'done' | 'not-wanted') =>
    void close.act({ applianceId, kind, outcome, on: today, note: null });
  return (
    <>
      <Group gap="xs">
        <Button
          variant="default"
          loading={close.isBusy}
          aria-label={`Done today, ${row.serial}`}
          onClick={() => closeAs('done')}
        >
          Done today
        </Button>
        <Button
          variant="default"
          loading={close.isBusy}
          aria-label={`Not wanted, ${row.serial}`}
          onClick={() => closeAs('not-wanted')}
        >
          Not wanted
        </Button>
      </Group>
      <ErrorText error={close.error} />
    </>
  );
}
