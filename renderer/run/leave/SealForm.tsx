/** Sealing: the record is fixed with its fingerprint. From here the way leads to the registration packet. */
import { useState } from 'react';
import { FieldSaved, type SaveState } from '../../kit/FieldSaved.tsx';
import { RouteLink } from '../../RouteLink.tsx';
import { ServiceDueWords } from '../../service/ServiceDueWords.tsx';
import { useRun } from '../state/RunContext.ts';
import { saveErrorWords } from '../words/saveErrorWords.ts';

export function SealForm() {
  const { view, write } = useRun();
  const [state, setState] = useState<SaveState>({ kind: 'idle' });
  const job = view.visit.jobs.find((one) => one.runId === view.runId);
  const others = view.visit.jobs.filter((one) => one.runId !== null && one.runId !== view.runId && !one.isSealed);

  const seal = async () => {
    setState({ kind: 'saving' });
    const reply = await write('visits.seal', { visitId: view.visitId, runId: view.runId });
    setState(reply.ok ? { kind: 'saved' } : { kind: 'not-saved', why: saveErrorWords(reply.error) });
  };
  return (
    <section className="run-gate" aria-label="Sealing">
      <h3>The visit has ended: {(view.visit.outcome ?? '').replaceAll('-', ' ')}</h3>
      {view.sealedSha256 === null ? (
        <>
          <p>
            {view.visit.outcome === 'finished'
              ? 'Sealing fixes the record for good. A later correction is an amendment that keeps the original.'
              : 'A return trip takes this record up again. Seal it only when nobody will come back: that fixes it for good.'}
          </p>
          <div className="run-box-row">
            {/* What cannot be taken back is the way on only where nobody comes back. */}
            <button
              type="button"
              className={view.visit.outcome === 'finished' ? 'run-button run-button-main' : 'run-button'}
              onClick={() => void seal()}
            >
              Seal the record
            </button>
            <FieldSaved state={state} />
          </div>
        </>
      ) : (
        <p>
          Sealed. Fingerprint <code className="run-fingerprint">{view.sealedSha256}</code>
        </p>
      )}
      {job === undefined || view.sealedSha256 === null ? null : (
        <p>
          <ServiceDueWords applianceId={job.applianceId} of="next" />
        </p>
      )}
      <div className="run-box-row">
        {job === undefined ? null : (
          <RouteLink to="registration" params={{ applianceId: job.applianceId }}>
            To the registration packet
          </RouteLink>
        )}
        {others.map((one) => (
          <RouteLink key={one.jobId} to="run" params={{ visitId: view.visitId, runId: one.runId ?? '' }}>
            Next appliance: {one.serial}
          </RouteLink>
        ))}
        <RouteLink to="visit" params={{ visitId: view.visitId }}>
          Back to the visit
        </RouteLink>
      </div>
    </section>
  );
}
