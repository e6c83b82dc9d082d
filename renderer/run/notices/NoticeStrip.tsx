/** Notices nobody has settled for this appliance, always on screen; before one that asks for it is settled nothing is lit. */
import { useState } from 'react';
import { stoppingNotices } from '../../../domain/recalls/openNotices.ts';
import { useRun } from '../state/RunContext.ts';
import { NoticeDialog } from './NoticeDialog.tsx';

export function NoticeStrip() {
  const { view, isSealed } = useRun();
  const [shownId, setShownId] = useState<string | null>(null);
  const { openNotices } = view.record;
  const [first] = openNotices;
  if (first === undefined || isSealed) return null;
  const stops = stoppingNotices(openNotices).length;
  const shown = openNotices.find(({ recallId }) => recallId === shownId);
  return (
    <div className="run-strip" data-tone={stops === 0 ? undefined : 'ember'} role="status">
      <strong>
        {openNotices.length === 1 ? 'A notice is' : `${openNotices.length} notices are`} not settled on this appliance:{' '}
        {stops === 0 ? 'it may run meanwhile.' : 'it must not fire.'}
      </strong>
      {openNotices.map(({ recallId, title }) => (
        <button key={recallId} type="button" className="run-button" onClick={() => setShownId(recallId)}>
          {title}
        </button>
      ))}
      {shown === undefined ? null : (
        <NoticeDialog key={shown.recallId} notice={shown} onClose={() => setShownId(null)} />
      )}
    </div>
  );
}
