/** Lines of the deadlines: each leads to what is missing and to the visit, and can be chosen for its packet. */
import { Checkbox, Group } from '@mantine/core';
import { derivationSentence } from '../../domain/coverage/derivation.ts';
import type { DeadlineRow } from '../../electron/contract/dues.ts';
import { PlainTable } from '../kit/PlainTable.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { RouteLink } from '../RouteLink.tsx';
import { daysLeftWords } from '../registrations/deadlineWords.ts';
import { ALARM_TONES, ALARM_WORDS, STAGE_WORDS } from './stageWords.ts';

export function DeadlineTable({
  rows,
  chosen,
  onChoose,
}: {
  readonly rows: readonly DeadlineRow[];
  /** By run. */
  readonly chosen: ReadonlySet<string>;
  readonly onChoose: (runIds: ReadonlySet<string>) => void;
}) {
  const mayBuild = useHasRole('owner', 'dispatcher');
  return (
    <PlainTable
      caption="Deadlines"
      rows={rows}
      keyOf={({ applianceId }) => applianceId}
      columns={[
        {
          label: 'Appliance',
          cell: ({ applianceId, runId, maker, model, serial }) => (
            <Group gap="sm" wrap="nowrap" align="start">
              {mayBuild ? (
                <Checkbox
                  aria-label={`Choose ${maker} ${model}, ${serial}`}
                  title={runId === null ? 'No record has been begun' : undefined}
                  disabled={runId === null}
                  checked={runId !== null && chosen.has(runId)}
                  onChange={(event) =>
                    runId !== null && onChoose(withOrWithout(chosen, runId, event.currentTarget.checked))
                  }
                />
              ) : null}
              <RouteLink to="appliance" params={{ applianceId }}>
                {maker} {model}, {serial}
              </RouteLink>
            </Group>
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

function withOrWithout(chosen: ReadonlySet<string>, runId: string, isWanted: boolean): ReadonlySet<string> {
  const next = new Set(chosen);
  if (isWanted) next.add(runId);
  else next.delete(runId);
  return next;
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
