/** The chosen appliances and what is made of them: their packets, one after the other. */
import { Button, Group, Switch } from '@mantine/core';
import { useState } from 'react';
import { MOST_PACKETS_AT_ONCE } from '../../electron/contract/packetBatches.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useCore } from '../operations/CoreAccess.tsx';
import { useAct } from '../operations/useAct.ts';
import { driveBatch } from '../packets/batchDriver.ts';
import { RouteLink } from '../RouteLink.tsx';
import { goTo } from '../route.ts';
import type { DeadlineFilter } from './deadlineFilter.ts';

const PAGE = 200;

export function ChosenPackets({
  filter,
  chosen,
  onChoose,
}: {
  readonly filter: DeadlineFilter;
  readonly chosen: ReadonlySet<string>;
  readonly onChoose: (runIds: ReadonlySet<string>) => void;
}) {
  const core = useCore();
  const start = useAct('packetBatches.start');
  const gather = useAct('deadlines.list');
  const mayBuild = useHasRole('owner', 'dispatcher');
  const [isDraft, setIsDraft] = useState(false);
  if (!mayBuild) return null;

  const chooseAll = async () => {
    const runIds = new Set<string>();
    let after: string | null = null;
    do {
      const reply: Awaited<ReturnType<typeof gather.act>> = await gather.act({ ...filter, limit: PAGE, after });
      if (!reply.ok) return;
      for (const { runId } of reply.value.rows) if (runId !== null) runIds.add(runId);
      after = reply.value.next;
    } while (after !== null && runIds.size < MOST_PACKETS_AT_ONCE);
    onChoose(new Set([...runIds].slice(0, MOST_PACKETS_AT_ONCE)));
  };
  const build = async () => {
    const reply = await start.act({ runIds: [...chosen], isDraft });
    if (!reply.ok) return;
    onChoose(new Set());
    void driveBatch(core, reply.value.batchId);
    goTo('packet-batch', { batchId: reply.value.batchId });
  };
  return (
    <section aria-label="Packets of those chosen">
      <Group gap="sm">
        <span role="status">{chosen.size === 0 ? 'None chosen' : `${chosen.size} chosen`}</span>
        <Button variant="default" loading={gather.isBusy} onClick={() => void chooseAll()}>
          Choose the whole list
        </Button>
        {chosen.size === 0 ? null : (
          <>
            <Button variant="default" onClick={() => onChoose(new Set())}>
              Choose none
            </Button>
            <Switch
              size="md"
              label="As drafts"
              checked={isDraft}
              onChange={(event) => setIsDraft(event.currentTarget.checked)}
            />
            <Button loading={start.isBusy} onClick={() => void build()}>
              {chosen.size === 1 ? 'Build 1 packet' : `Build ${chosen.size} packets`}
            </Button>
          </>
        )}
        <RouteLink to="packet-batches" params={{}}>
          Built in bulk before
        </RouteLink>
      </Group>
      <ErrorText error={start.error ?? gather.error} />
    </section>
  );
}
