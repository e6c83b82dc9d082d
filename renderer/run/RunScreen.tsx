/** The technician's run at the appliance: step by step, every reading judged as it is typed. */
import { useEffect } from 'react';
import type { PastRun } from '../../domain/trend/pastRun.ts';
import { Answer } from '../kit/Answer.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { Run } from './Run.tsx';
import './run.css';

const NOTHING_BEFORE: readonly PastRun[] = [];

export function RunScreen({
  visitId,
  runId,
  stepKey,
}: {
  readonly visitId: string;
  readonly runId: string;
  readonly stepKey: string | null;
}) {
  const asked = useOperation('visits.getRun', { visitId, runId });
  const isStartup = asked.state === 'ready' && asked.value.record.kind === 'startup';
  const earlier = useOperation('visits.getPast', { runId }, { isWanted: asked.state === 'ready' && !isStartup });
  const past = isStartup ? NOTHING_BEFORE : earlier.state === 'ready' ? earlier.value : null;
  useEffect(() => {
    document.title = 'Run – Lightoff';
  }, []);
  if (asked.state === 'ready' && past !== null) {
    return <Run key={runId} view={asked.value} past={past} stepKey={stepKey} />;
  }
  return (
    <main id="main" className="lo-alone" tabIndex={-1}>
      {asked.state === 'ready' ? <Answer of={earlier}>{() => null}</Answer> : <Answer of={asked}>{() => null}</Answer>}
    </main>
  );
}
