/** Lines of the deadlines: each leads to what is missing and to the visit. */
import { derivationSentence } from '../../domain/coverage/derivation.ts';
import type { DeadlineRow } from '../../electron/contract/dues.ts';
import { PlainTable } from '../kit/PlainTable.tsx';
import { RouteLink } from '../RouteLink.tsx';
import { daysLeftWords } from '../registrations/deadlineWords.ts';
import { ALARM_TONES, ALARM_WORDS, STAGE_WORDS } from './stageWords.ts';

export function DeadlineTable({ rows }: { readonly rows: readonly DeadlineRow[] }) {
  return (
    <PlainTable
      caption="Deadlines"
      rows={rows}
      keyOf={({ applianceId }) => applianceId}
      columns={[
        {
          label: 'Appliance',
          cell: ({ applianceId, maker, model, serial }) => (
            <RouteLink to="appliance" params={{ applianceId }}>
              {maker} {model}, {serial}
            </RouteLink>
          ),
        },
        { label: 'Last day', cell: (row) => <LastDay row={row} /> },
        { label: 'State', cell: (row) => <Stage row={row} /> },
        {
          label: 'Visit',
          cell: ({ visitId, runId }) =>
            visitId === null ? (
              ''
            ) : runId === null ? (
              <RouteLink to="visit" params={{ visitId }}>
                Visit
              </RouteLink>
            ) : (
              <RouteLink to="run" params={{ visitId, runId }}>
                Record
              </RouteLink>
            ),
        },
        { label: 'Technician', cell: ({ technicianName }) => technicianName ?? '' },
        {
          label: 'Customer',
          cell: ({ customerName, street, city }) => (
            <>
              {customerName}
              <div className="lo-faint">{[street, city].filter(Boolean).join(', ')}</div>
            </>
          ),
        },
      ]}
    />
  );
}

function LastDay({ row }: { readonly row: DeadlineRow }) {
  const isWithMaker = row.stage === 'submitted' || row.stage === 'confirmed';
  return (
    <>
      {isWithMaker ? null : (
        <span className="lo-verdict" data-tone={ALARM_TONES[row.alarm]}>
          {daysLeftWords(row.daysLeft)}
        </span>
      )}
      {isWithMaker || ALARM_WORDS[row.alarm] === '' ? null : <div>{ALARM_WORDS[row.alarm]}</div>}
      <div className="lo-faint">{derivationSentence(row.derivation)}</div>
    </>
  );
}

function Stage({ row }: { readonly row: DeadlineRow }) {
  const { applianceId, stage, missingCount } = row;
  if (stage === 'not-begun') return <>{STAGE_WORDS[stage]}</>;
  return (
    <>
      {STAGE_WORDS[stage]}
      <div>
        <RouteLink to="registration" params={{ applianceId }}>
          {missingWords(missingCount)}
        </RouteLink>
      </div>
    </>
  );
}

function missingWords(count: number | null): string {
  if (count === null) return 'counting what is missing …';
  if (count === 0) return 'Registration';
  return count === 1 ? '1 thing missing' : `${count} things missing`;
}
