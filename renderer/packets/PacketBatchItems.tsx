/** The packets of a batch, a page at a time: built with its file, or not and why, with the way to what is missing. */
import { NativeSelect } from '@mantine/core';
import { useState } from 'react';
import type { PacketBatch, PacketBatchItem } from '../../electron/contract/packetBatches.ts';
import { Answer } from '../kit/Answer.tsx';
import { DownloadButton } from '../kit/DownloadButton.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { PageTurner } from '../kit/PageTurner.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { usePages } from '../operations/usePages.ts';
import { RouteLink } from '../RouteLink.tsx';
import { ITEM_STATE_WORDS, whyWords } from './packetBatchWords.ts';

export function PacketBatchItems({ batch: { batchId } }: { readonly batch: PacketBatch }) {
  const [show, setShow] = useState<'all' | 'failed'>('all');
  const pages = usePages(show);
  const found = useOperation('packetBatches.get', {
    batchId,
    show,
    after: pages.after === null ? -1 : Number(pages.after),
  });
  return (
    <Panel
      title="What became of each"
      action={
        <NativeSelect
          aria-label="Show"
          value={show}
          data={[
            { value: 'all', label: 'all' },
            { value: 'failed', label: 'those not built' },
          ]}
          onChange={(event) => setShow(event.currentTarget.value === 'failed' ? 'failed' : 'all')}
        />
      }
    >
      <Answer of={found}>
        {({ items, next }) => (
          <>
            {items.length === 0 ? (
              <EmptyState title="None">Nothing of this batch could not be built.</EmptyState>
            ) : (
              <Items rows={items} />
            )}
            <PageTurner pages={pages} next={next === null ? null : String(next)} />
          </>
        )}
      </Answer>
    </Panel>
  );
}

function Items({ rows }: { readonly rows: readonly PacketBatchItem[] }) {
  return (
    <PlainTable
      caption="Packets of this batch"
      rows={rows}
      keyOf={({ runId }) => runId}
      columns={[
        {
          label: 'Appliance',
          cell: ({ applianceId, maker, model, serial }) => (
            <RouteLink to="registration" params={{ applianceId }}>
              {maker} {model}, {serial}
            </RouteLink>
          ),
        },
        { label: 'Customer', cell: ({ customerName }) => customerName },
        { label: 'State', cell: ({ state }) => ITEM_STATE_WORDS[state] },
        { label: 'Why', cell: whyWords },
        {
          label: 'File',
          cell: ({ packetPdfId, serial }) =>
            packetPdfId === null ? '' : <DownloadButton attachmentId={packetPdfId} what={`packet of ${serial}`} />,
        },
      ]}
    />
  );
}
