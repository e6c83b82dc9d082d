/** The appliances a notice is about: why it can’t be told where it can’t, who was told, and what was done. */
import { NativeSelect } from '@mantine/core';
import { useState } from 'react';
import type { AffectedRow } from '../../electron/contract/recalls.ts';
import { Answer } from '../kit/Answer.tsx';
import { DateText, InstantText } from '../kit/DateText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { PageTurner } from '../kit/PageTurner.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { keyOf, optionsOf } from '../kit/tradeWords.ts';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { usePages } from '../operations/usePages.ts';
import { RouteLink } from '../RouteLink.tsx';
import { DOUBT_WORDS, OUTCOME_WORDS, SHOW_WORDS } from './recallWords.ts';
import { SettleNotice } from './SettleNotice.tsx';

export function AffectedPanel({ recallId }: { readonly recallId: string }) {
  const [show, setShow] = useState<keyof typeof SHOW_WORDS>('open');
  const pages = usePages(show);
  const found = useOperation('recalls.get', { recallId, show, after: Number(pages.after ?? 0) });
  return (
    <Panel
      title="Appliances"
      action={
        <NativeSelect
          aria-label="Which appliances"
          value={show}
          data={[...optionsOf(SHOW_WORDS)]}
          onChange={(event) => setShow(keyOf(SHOW_WORDS, event.currentTarget.value) ?? 'open')}
        />
      }
    >
      <Answer of={found}>
        {({ rows, next }) => (
          <>
            {rows.length === 0 ? (
              <EmptyState title="None">No appliance on file is like that.</EmptyState>
            ) : (
              <Affected recallId={recallId} rows={rows} />
            )}
            <PageTurner pages={pages} next={next === null ? null : String(next)} />
          </>
        )}
      </Answer>
    </Panel>
  );
}

function Affected({ recallId, rows }: { readonly recallId: string; readonly rows: readonly AffectedRow[] }) {
  const maySettle = useHasRole('owner', 'dispatcher', 'technician');
  return (
    <PlainTable
      caption="Appliances the notice is about"
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
        {
          label: 'Meant',
          cell: ({ doubts }) => (doubts.length === 0 ? 'yes' : doubts.map((doubt) => DOUBT_WORDS[doubt]).join('; ')),
        },
        {
          label: 'Customer',
          cell: ({ customerName, phone, street, city }) => (
            <>
              {customerName ?? 'nobody on file'}
              {phone === null ? null : <div>{phone}</div>}
              <div className="lo-faint">{[street, city].filter(Boolean).join(', ')}</div>
            </>
          ),
        },
        {
          label: 'Told',
          cell: ({ told }) =>
            told === null ? (
              'not yet'
            ) : (
              <>
                <InstantText at={told.at} />, {told.channel}
              </>
            ),
        },
        {
          label: 'Done',
          cell: (row) => (
            <>
              {row.outcome === null ? null : (
                <>
                  {OUTCOME_WORDS[row.outcome.outcome]}, <DateText day={row.outcome.on} />
                  {row.outcome.note === null ? null : <div className="lo-faint">{row.outcome.note}</div>}
                </>
              )}
              {maySettle ? (
                <SettleNotice recallId={recallId} applianceId={row.applianceId} serial={row.serial} />
              ) : null}
            </>
          ),
        },
      ]}
    />
  );
}
