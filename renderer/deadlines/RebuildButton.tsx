/** Works every due day out again from what is recorded, with a bar that moves and a way to stop. Nothing is lost by it. */
import { Button, Group, Progress } from '@mantine/core';
import { useRef, useState } from 'react';
import { ErrorText } from '../kit/ErrorText.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';

export function RebuildButton() {
  const rebuild = useAct('dues.rebuild');
  const mayRebuild = useHasRole('owner', 'dispatcher');
  const [done, setDone] = useState<number | null>(null);
  const isStopped = useRef(false);
  if (!mayRebuild) return null;
  const start = async () => {
    isStopped.current = false;
    setDone(0);
    let after: string | null = null;
    do {
      const reply: Awaited<ReturnType<typeof rebuild.act>> = await rebuild.act({ after });
      if (!reply.ok) break;
      setDone(reply.value.total === 0 ? 1 : reply.value.done / reply.value.total);
      after = reply.value.next;
    } while (after !== null && !isStopped.current);
    setDone(null);
  };
  return (
    <>
      {done === null ? (
        <Button variant="default" onClick={() => void start()}>
          Work all days out again
        </Button>
      ) : (
        <Group gap="sm">
          <Progress.Root size="lg" style={{ width: '12rem' }}>
            <Progress.Section value={done * 100} aria-label="Days worked out" />
          </Progress.Root>
          <Button
            variant="default"
            onClick={() => {
              isStopped.current = true;
            }}
          >
            Stop
          </Button>
        </Group>
      )}
      <ErrorText error={rebuild.error} />
    </>
  );
}
