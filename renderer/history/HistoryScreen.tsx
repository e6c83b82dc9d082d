/** One appliance's whole life on one page: owners, claims, and everything that happened, the newest first. */
import { Button, Group, Stack } from '@mantine/core';
import { useState } from 'react';
import { isQuantityKey, quantitySpec } from '../../domain/quantity/quantities.ts';
import type { HistoryEntry } from '../../electron/contract/history.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import { ClaimsPanel } from '../claims/ClaimsPanel.tsx';
import { Answer } from '../kit/Answer.tsx';
import { DateText } from '../kit/DateText.tsx';
import { DownloadButton } from '../kit/DownloadButton.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { QuantityText } from '../kit/QuantityText.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { Thumbnail } from '../run/items/Thumbnail.tsx';
import { TrendsPanel } from '../service/TrendsPanel.tsx';
import { historyWords } from './historyWords.ts';
import { PutBackTransfer } from './PutBackTransfer.tsx';

type History = OutputOf<'history.get'>;

export function HistoryScreen({ applianceId }: { readonly applianceId: string }) {
  const found = useOperation('history.get', { applianceId });
  const value = found.state === 'ready' ? found.value : null;
  return (
    <Screen
      title={value === null ? 'History' : `History of ${value.maker} ${value.model}, ${value.serial}`}
      crumbs={
        <RouteLink to="appliance" params={{ applianceId }}>
          The appliance
        </RouteLink>
      }
      action={<ProofFile applianceId={applianceId} />}
    >
      <Answer of={found}>
        {(history) => (
          <>
            <Owners history={history} />
            <ClaimsPanel applianceId={applianceId} />
            <TrendsPanel applianceId={applianceId} />
            <Timeline entries={history.entries} />
          </>
        )}
      </Answer>
    </Screen>
  );
}

function ProofFile({ applianceId }: { readonly applianceId: string }) {
  const build = useAct('claims.buildFile');
  const mayBuild = useHasRole('owner', 'dispatcher', 'technician');
  const [made, setMade] = useState<OutputOf<'claims.buildFile'> | null>(null);
  if (!mayBuild) return null;
  return (
    <Group gap="sm">
      <ErrorText error={build.error} />
      {made === null ? null : (
        <span role="status">
          {made.recordCount === 1 ? 'One sealed record' : `${made.recordCount} sealed records`}{' '}
          <DownloadButton attachmentId={made.attachmentId} what={made.fileName} />
        </span>
      )}
      <Button
        variant="default"
        loading={build.isBusy}
        onClick={async () => {
          const reply = await build.act({ applianceId, claimId: null });
          if (reply.ok) setMade(reply.value);
        }}
      >
        Make one PDF of it
      </Button>
    </Group>
  );
}

function Owners({ history: { owners, siteId } }: { readonly history: History }) {
  const mayTransfer = useHasRole('owner', 'dispatcher');
  return (
    <Panel
      title="Owners"
      action={
        mayTransfer && siteId !== null ? (
          <RouteLink to="transfer-site" params={{ siteId }}>
            Changed hands
          </RouteLink>
        ) : undefined
      }
    >
      {owners.length === 0 ? (
        <EmptyState title="No owner on file">The appliance stands nowhere at present.</EmptyState>
      ) : (
        <PlainTable
          caption="Owners"
          rows={owners}
          keyOf={({ name, fromOn, toOn }) => `${name} ${fromOn} ${toOn}`}
          columns={[
            { label: 'Owner', cell: ({ name }) => name },
            { label: 'From', cell: ({ fromOn }) => (fromOn === null ? '' : <DateText day={fromOn} />) },
            { label: 'To', cell: ({ toOn }) => (toOn === null ? 'now' : <DateText day={toOn} />) },
            { label: 'Reach', cell: ({ phone, email }) => [phone, email].filter(Boolean).join(', ') },
          ]}
        />
      )}
      {siteId === null ? null : <PutBackTransfer siteId={siteId} />}
    </Panel>
  );
}

function Timeline({ entries }: { readonly entries: readonly HistoryEntry[] }) {
  return (
    <Panel title="What happened">
      {entries.length === 0 ? (
        <EmptyState title="Nothing yet">Visits, dates, documents, parts and claims stand here by day.</EmptyState>
      ) : (
        <ol className="lo-gaps" style={{ listStyle: 'none', paddingInlineStart: 0 }}>
          {numbered(entries).map(({ entry, key }) => (
            <TimelineEntry key={key} entry={entry} />
          ))}
        </ol>
      )}
    </Panel>
  );
}

/** Two entries may say the very same of the same day: then their order alone tells them apart. */
function numbered(entries: readonly HistoryEntry[]): readonly { readonly entry: HistoryEntry; readonly key: string }[] {
  const seen = new Map<string, number>();
  return entries.map((entry) => {
    const { on, kind, what, detail, visitId } = entry;
    const said = `${on} ${kind} ${what} ${detail} ${visitId}`;
    const count = seen.get(said) ?? 0;
    seen.set(said, count + 1);
    return { entry, key: `${said} ${count}` };
  });
}

function TimelineEntry({ entry }: { readonly entry: HistoryEntry }) {
  const { on, visitId, runId, attachmentId, readings, photos } = entry;
  return (
    <li style={{ display: 'block', paddingBlock: '0.55rem' }}>
      <Group gap="sm">
        <span style={{ minWidth: '6.5rem' }}>
          <DateText day={on} />
        </span>
        {visitId === null ? (
          <span>{historyWords(entry)}</span>
        ) : (
          <RouteLink to="visit" params={{ visitId }}>
            {historyWords(entry)}
          </RouteLink>
        )}
        {visitId !== null && runId !== null ? (
          <RouteLink to="run" params={{ visitId, runId }}>
            record
          </RouteLink>
        ) : null}
        {attachmentId === null ? null : <DownloadButton attachmentId={attachmentId} what={historyWords(entry)} />}
      </Group>
      {readings.length === 0 && photos.length === 0 ? null : (
        <details style={{ marginInlineStart: '7.25rem' }}>
          <summary>
            {readings.length} readings, {photos.length} photos
          </summary>
          <Stack gap="sm">
            <Readings readings={readings} />
            <Photos photos={photos} />
          </Stack>
        </details>
      )}
    </li>
  );
}

function Readings({ readings }: { readonly readings: HistoryEntry['readings'] }) {
  const known = readings.flatMap(({ quantity, ...reading }, index) =>
    isQuantityKey(quantity) ? [{ quantity, index, ...reading }] : [],
  );
  if (known.length === 0) return null;
  return (
    <PlainTable
      caption="Readings"
      rows={known}
      keyOf={({ index }) => String(index)}
      columns={[
        {
          label: 'Reading',
          cell: ({ quantity, point }) => `${quantitySpec(quantity).label}${point === null ? '' : `, ${point}`}`,
        },
        {
          label: 'Value',
          cell: ({ quantity, valueOwn, comparator }) =>
            valueOwn === null ? (
              'not measured'
            ) : (
              <>
                {comparator === '=' ? '' : `${comparator} `}
                <QuantityText quantity={quantity} value={valueOwn} />
              </>
            ),
          isNumber: true,
        },
      ]}
    />
  );
}

function Photos({ photos }: { readonly photos: HistoryEntry['photos'] }) {
  if (photos.length === 0) return null;
  return (
    <Group gap="sm">
      {photos.map(({ attachmentId, itemKey }) => (
        <Thumbnail key={attachmentId} attachmentId={attachmentId} label={(itemKey ?? 'photo').replaceAll('-', ' ')} />
      ))}
    </Group>
  );
}
