/** Before leaving: what stands in the way of it and of the registration, what is not proven, then the end of the visit. */
import { useEffect, useRef } from 'react';
import type { ProgressBlocker } from '../../../domain/procedure/progressTypes.ts';
import { HandoverSheet } from '../../visits/HandoverSheet.tsx';
import { BlockersByStep } from '../stage/BlockersByStep.tsx';
import { useRun } from '../state/RunContext.ts';
import { FinishForm } from './FinishForm.tsx';
import { SealForm } from './SealForm.tsx';
import { sameBlocker } from './sameBlocker.ts';

export function LeavePanel() {
  const { analysis, view, isSealed } = useRun();
  const { gates } = analysis.progress;
  const registrationOnly = gates.registration.filter((one) => !gates.leaving.some((other) => sameBlocker(one, other)));
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.closest('main')?.scrollTo(0, 0);
    heading.current?.focus({ preventScroll: true });
  }, []);
  const isFinished = view.visit.outcome !== null;
  return (
    <section className="run-stage" aria-labelledby="run-leave-title">
      <div className="run-stage-head">
        <h2 id="run-leave-title" tabIndex={-1} ref={heading}>
          Before leaving
        </h2>
      </div>
      {isSealed ? null : (
        <>
          <Gate
            title="Stands in the way of leaving"
            nothing="Nothing stands in the way of leaving."
            blockers={gates.leaving}
          />
          <Gate
            title="Stands in the way of registration only"
            nothing="Nothing more stands in the way of registration."
            blockers={registrationOnly}
          />
        </>
      )}
      <section className="run-gate">
        <h3>For the people who live there</h3>
        <HandoverSheet runId={view.runId} serial={view.record.appliance.serial} />
      </section>
      {isFinished || isSealed ? null : <FinishForm />}
      {isFinished || isSealed ? <SealForm /> : null}
    </section>
  );
}

function Gate({
  title,
  nothing,
  blockers,
}: {
  readonly title: string;
  readonly nothing: string;
  readonly blockers: readonly ProgressBlocker[];
}) {
  if (blockers.length === 0) return <p className="run-done-words">{nothing}</p>;
  return (
    <section className="run-gate">
      <h3>
        {title}: {blockers.length}
      </h3>
      <BlockersByStep blockers={blockers} />
    </section>
  );
}
