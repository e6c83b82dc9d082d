/** One batch of packets: its bar, how to stop it and go on, what is built in one file, and what could not be built and why. */
import { Button, Group, NativeSelect, Progress, Stack } from '@mantine/core';
import { useState } from 'react';
import type { PACKET_BATCH_PARTS, PacketBatch } from '../../electron/contract/packetBatches.ts';
import { Answer } from '../kit/Answer.tsx';
import { capital } from '../kit/capital.ts';
import { InstantText } from '../kit/DateText.tsx';
import { downloadAttachment } from '../kit/downloadFile.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useCore } from '../operations/CoreAccess.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { driveBatch, useDrive } from './batchDriver.ts';
import { PacketBatchItems } from './PacketBatchItems.tsx';
import { kindWords, progressWords, restingWords } from './packetBatchWords.ts';

type What = (typeof PACKET_BATCH_PARTS)[number];

export function PacketBatchScreen({ batchId }: { readonly batchId: string }) {
  const found = useOperation('packetBatches.get', { batchId });
  return (
    <Screen
      title="Packets in bulk"
      crumbs={
        <>
          <RouteLink to="deadlines" params={{}}>
            Deadlines
          </RouteLink>
          <RouteLink to="packet-batches" params={{}}>
            All batches
          </RouteLink>
        </>
      }
    >
      <Answer of={found}>
        {({ batch, fileCounts }) => (
          <>
            <ProgressPanel kept={batch} />
            {batch.built > 0 ? <SavePanel batchId={batchId} fileCounts={fileCounts} /> : null}
            <PacketBatchItems batch={batch} />
          </>
        )}
      </Answer>
    </Screen>
  );
}

function ProgressPanel({ kept }: { readonly kept: PacketBatch }) {
  const core = useCore();
  const drive = useDrive(kept.batchId);
  const stop = useAct('packetBatches.stop');
  const resume = useAct('packetBatches.resume');
  const mayBuild = useHasRole('owner', 'dispatcher');
  const isGoing = drive?.isGoing === true;
  const batch = (isGoing ? drive.batch : null) ?? kept;
  const goOn = async (withFailed: boolean) => {
    const reply = await resume.act({ batchId: kept.batchId, withFailed });
    if (reply.ok) void driveBatch(core, kept.batchId);
  };
  return (
    <Panel title={kindWords(batch)}>
      <Stack gap="sm">
        <p style={{ margin: 0 }}>
          Begun <InstantText at={batch.startedAt} /> by {batch.startedByName}.
        </p>
        <Progress.Root size="lg" style={{ maxInlineSize: '44rem' }}>
          <Progress.Section
            value={((batch.built + batch.failed) / Math.max(1, batch.total)) * 100}
            aria-label="Packets worked off"
          />
        </Progress.Root>
        <p role="status" style={{ margin: 0 }}>
          {progressWords(batch)}. {isGoing ? 'Building …' : `${capital(restingWords(batch))}.`}
        </p>
        <ErrorText error={drive?.error ?? stop.error ?? resume.error} />
        {mayBuild ? (
          <Group gap="sm">
            {isGoing ? (
              <Button variant="default" loading={stop.isBusy} onClick={() => void stop.act({ batchId: kept.batchId })}>
                Stop
              </Button>
            ) : null}
            {!isGoing && batch.waiting > 0 ? (
              <Button loading={resume.isBusy} onClick={() => void goOn(false)}>
                Go on
              </Button>
            ) : null}
            {!isGoing && batch.failed > 0 ? (
              <Button variant="default" loading={resume.isBusy} onClick={() => void goOn(true)}>
                Try those not built again
              </Button>
            ) : null}
          </Group>
        ) : null}
      </Stack>
    </Panel>
  );
}

function SavePanel({
  batchId,
  fileCounts,
}: {
  readonly batchId: string;
  readonly fileCounts: Readonly<Record<What, number>>;
}) {
  const core = useCore();
  const save = useAct('packetBatches.save');
  const maySave = useHasRole('owner', 'dispatcher');
  const [what, setWhat] = useState<What>('pages');
  const [isLost, setIsLost] = useState(false);
  if (!maySave) return null;
  const files = Array.from({ length: fileCounts[what] }, (_, index) => index + 1);
  return (
    <Panel title="Save">
      <Group gap="sm" align="end">
        <NativeSelect
          label="Which files"
          value={what}
          data={[
            { value: 'pages', label: 'the packets as PDF' },
            { value: 'whole', label: 'packets with record, readings and photos' },
          ]}
          onChange={(event) => setWhat(event.currentTarget.value as What)}
        />
        {files.map((file) => (
          <Button
            key={file}
            loading={save.isBusy}
            onClick={async () => {
              const reply = await save.act({ batchId, what, file });
              setIsLost(reply.ok && (await downloadAttachment(core, reply.value.attachmentId)) !== null);
            }}
          >
            {files.length === 1 ? 'Save as one ZIP' : `Save ZIP ${file} of ${files.length}`}
          </Button>
        ))}
      </Group>
      <p className="lo-faint" style={{ margin: 0 }}>
        A table in it says what became of each.
      </p>
      <ErrorText error={save.error} />
      {isLost ? (
        <Note tone="ember" isSpoken>
          The file could not be read. Try again.
        </Note>
      ) : null}
    </Panel>
  );
}
