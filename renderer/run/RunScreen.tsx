/** The technician's run at the appliance: step by step, every reading judged as it is typed. */
import { useEffect } from 'react';
import { Answer } from '../kit/Answer.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { Run } from './Run.tsx';
import './run.css';

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
  useEffect(() => {
    document.title = 'Run – Lightoff';
  }, []);
  if (asked.state === 'ready') return <Run key={runId} view={asked.value} stepKey={stepKey} />;
  return (
    <main id="main" className="lo-alone" tabIndex={-1}>
      <Answer of={asked}>{() => null}</Answer>
    </main>
  );
}
