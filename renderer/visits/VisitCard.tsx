/** One visit in a list: when, who, where, what; state in words. */
import type { VisitRow } from '../../electron/contract/visits.ts';
import { durationWords } from '../form/readTime.ts';
import { MakeSafeCount } from '../kit/MakeSafeCount.tsx';
import { NoticeCount } from '../kit/NoticeCount.tsx';
import { JOB_KIND_WORDS, OUTCOME_WORDS, VISIT_STATE_WORDS } from '../kit/tradeWords.ts';
import { RouteLink } from '../RouteLink.tsx';

export function VisitCard({ visit }: { readonly visit: VisitRow }) {
  const openMakeSafes = visit.jobs.reduce((sum, job) => sum + job.openMakeSafes, 0);
  const outcome = visit.outcome === null || visit.outcome === 'finished' ? null : OUTCOME_WORDS[visit.outcome];
  return (
    <article className="lo-visit" data-state={visit.state}>
      <RouteLink to="visit" params={{ visitId: visit.visitId }} className="lo-visit-link">
        <span className="lo-visit-time">{arrivalWords(visit)}</span> {visit.customerName}
      </RouteLink>
      <div>
        {visit.street}, {visit.city}
      </div>
      <div>{visit.jobs.map((job) => `${JOB_KIND_WORDS[job.kind]} ${job.model}`).join(' + ')}</div>
      <div className="lo-faint">
        {visit.crew.map(({ name }) => name).join(', ')} · {durationWords(visit.durationMin)} ·{' '}
        {VISIT_STATE_WORDS[visit.state]}
        {outcome === null ? '' : `: ${outcome}`}
      </div>
      <MakeSafeCount count={openMakeSafes} />
      <NoticeCount of={visit.jobs.flatMap((job) => job.openNotices)} />
    </article>
  );
}

export function arrivalWords({ plannedFrom, plannedTo }: VisitRow): string {
  if (plannedFrom === null) return plannedTo === null ? 'any time' : `until ${plannedTo}`;
  return plannedTo === null ? plannedFrom : `${plannedFrom}–${plannedTo}`;
}
