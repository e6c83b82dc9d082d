/** A list being taken in or out: how far it is, and a way to stop it. */
import { Button, Group, Progress, Stack } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import type { ListWorkKind } from '../../electron/contract/imports.ts';
import { useCore } from '../operations/CoreAccess.tsx';
import { listStepPct, listStepWords } from './listStepWords.ts';
import { stopList, useListDrive } from './listWorkDriver.ts';

export function ListProgress({ kind }: { readonly kind: ListWorkKind }) {
  const core = useCore();
  const { work, step } = useListDrive();
  const [isStopping, setIsStopping] = useState(false);
  const bar = useRef<HTMLDivElement>(null);
  const workId = work?.workId ?? null;
  // Whoever begins it sees it move, wherever on the screen the button was.
  useEffect(() => {
    if (workId === null) return;
    setIsStopping(false);
    bar.current?.scrollIntoView({ block: 'nearest' });
  }, [workId]);
  if (work?.kind !== kind) return null;
  const stop = async () => {
    setIsStopping(true);
    await stopList(core);
  };
  return (
    <Stack gap="xs" ref={bar}>
      <strong>
        {work.kind === 'take-in' ? 'Taking in' : 'Taking out'} {work.fileName}
      </strong>
      <Progress.Root size="lg" style={{ maxInlineSize: '44rem' }}>
        <Progress.Section value={listStepPct(step)} aria-label="Of the list" />
      </Progress.Root>
      <Group gap="md">
        <span role="status">{listStepWords(work.kind, step)}</span>
        <Button variant="default" loading={isStopping} onClick={() => void stop()}>
          Stop
        </Button>
      </Group>
      <span className="lo-faint">
        It is there as a whole at the end, or not at all. Until then everything can be looked at; what somebody saves
        meanwhile waits for it.
      </span>
    </Stack>
  );
}
