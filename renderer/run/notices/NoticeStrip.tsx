/** Recalls and stop-use notices nobody has settled for this appliance: nothing is lit before; always on screen. */
import { useState } from 'react';
import { useRun } from '../state/RunContext.ts';
import { NoticeDialog } from './NoticeDialog.tsx';

export function NoticeStrip() {
  const { view, isSealed } = useRun();
  const [shownId, setShownId] = useState<string | null>(null);
  const { openNotices } = view.record;
  const [first] = openNotices;
  if (first === undefined || isSealed) return null;
  const shown = openNotices.find(({ recallId }) => recallId === shownId);
  return (
    <div className="run-strip" data-tone="ember" role="status">
      <strong>
        {openNotices.length === 1 ? 'A notice is' : `${openNotices.length} notices are`} not settled on this appliance:
        it must not fire.
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
