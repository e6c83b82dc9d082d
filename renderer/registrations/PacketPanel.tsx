/** The packet: what is still missing and where it is given, building it as draft or final, and its files. */
import { Button, Group, Stack, TextInput } from '@mantine/core';
import { useState } from 'react';
import type { OutputOf } from '../../electron/contract/index.ts';
import type { PacketGap } from '../../electron/contract/registrations.ts';
import { InstantText } from '../kit/DateText.tsx';
import { DownloadButton } from '../kit/DownloadButton.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { KeyTo } from '../shortcuts/KeyTo.tsx';
import { GapLink } from './GapLink.tsx';
import { gapWords } from './gapWords.ts';

type Registration = OutputOf<'registrations.get'>;

const DOCUMENT_WORDS = {
  'packet-pdf': 'packet (PDF)',
  'record-json': 'record (JSON)',
  'packet-zip': 'everything with photos (ZIP)',
} as const;

export function PacketPanel({ registration }: { readonly registration: Registration }) {
  const { gaps, documents, runId } = registration;
  const lastBuiltAt = documents
    .map(({ issuedAt }) => issuedAt)
    .sort()
    .at(-1);
  const latest = documents.filter(({ issuedAt }) => issuedAt === lastBuiltAt);
  const earlier = documents.filter(({ issuedAt }) => issuedAt !== lastBuiltAt);
  return (
    <Panel title="Packet">
      <Stack gap="md">
        {runId === null ? (
          <EmptyState title="No record yet">
            The packet is made from the startup’s record. Book the startup on the appliance; the record is made on site.
          </EmptyState>
        ) : (
          <>
            <Gaps registration={registration} gaps={gaps} />
            <Build runId={runId} gapCount={gaps.length} />
          </>
        )}
        <Documents documents={latest} caption="Files of the packet" />
        {earlier.length === 0 ? null : (
          <details>
            <summary>Earlier builds</summary>
            <Documents documents={earlier} caption="Files of earlier builds" />
          </details>
        )}
      </Stack>
    </Panel>
  );
}

function Documents({
  documents,
  caption,
}: {
  readonly documents: Registration['documents'];
  readonly caption: string;
}) {
  if (documents.length === 0) return null;
  return (
    <PlainTable
      caption={caption}
      rows={documents}
      keyOf={(document) => `${document.attachmentId} ${document.issuedAt}`}
      columns={[
        {
          label: 'File',
          cell: ({ kind, isDraft, gapReason }) => (
            <>
              {DOCUMENT_WORDS[kind]}
              {isDraft ? ', draft' : ''}
              {gapReason === null ? null : <div className="lo-faint">with something missing: {gapReason}</div>}
            </>
          ),
        },
        { label: 'Built', cell: ({ issuedAt }) => <InstantText at={issuedAt} /> },
        {
          label: 'Save',
          cell: ({ attachmentId, kind }) => <DownloadButton attachmentId={attachmentId} what={DOCUMENT_WORDS[kind]} />,
        },
      ]}
    />
  );
}

function Gaps({ registration, gaps }: { readonly registration: Registration; readonly gaps: readonly PacketGap[] }) {
  // What was handed in is not asked for again: whether something was missing then stands with its files.
  if (registration.submittedOn !== null) return null;
  if (gaps.length === 0) return <Note tone="fir">Nothing is missing.</Note>;
  return (
    <div>
      <h3>{gaps.length === 1 ? 'One thing is missing' : `${gaps.length} things are missing`}</h3>
      <ul className="lo-gaps">
        {gaps.map((gap) => (
          <li key={`${gap.code} ${gap.stepKey} ${gap.itemKey} ${gap.detail}`}>
            <span>{gapWords(gap)}</span>
            <GapLink gap={gap} registration={registration} />
          </li>
        ))}
      </ul>
    </div>
  );
}

function Build({ runId, gapCount }: { readonly runId: string; readonly gapCount: number }) {
  const build = useAct('packets.build');
  const mayBuild = useHasRole('owner', 'dispatcher', 'technician');
  const mayOverlookGaps = useHasRole('owner');
  const [reason, setReason] = useState('');
  if (!mayBuild) return null;
  const start = (isDraft: boolean) =>
    void build.act({ runId, isDraft, gapReason: isDraft || reason.trim() === '' ? null : reason });
  return (
    <KeyTo keys="b" label="To building the packet">
      <Stack gap="sm">
        {gapCount > 0 && mayOverlookGaps ? (
          <TextInput
            label="Why the final packet goes out with something missing"
            description="Printed on it. Only the owner may; leave it empty to wait until everything is there."
            autoComplete="off"
            maw="44rem"
            value={reason}
            onChange={(event) => setReason(event.currentTarget.value)}
          />
        ) : null}
        <ErrorText error={build.error} />
        <Group gap="sm">
          <Button loading={build.isBusy} disabled={gapCount > 0 && reason.trim() === ''} onClick={() => start(false)}>
            Build the final packet
          </Button>
          <Button variant="default" loading={build.isBusy} onClick={() => start(true)}>
            Build a draft
          </Button>
          <span className="lo-faint">A draft says so on every page.</span>
        </Group>
      </Stack>
    </KeyTo>
  );
}
