/** Somebody whose licence has an upper limit works where nobody has read the plate's rating: said at once, and typed right here. */
import { useState } from 'react';
import { plateRatingKw } from '../../../domain/procedure/plateRating.ts';
import { useRun } from '../state/RunContext.ts';
import { PlateRatingDialog } from './PlateRatingDialog.tsx';

export function PlateRatingStrip() {
  const { view, analysis, signedIn, isSealed } = useRun();
  const [isTyping, setIsTyping] = useState(false);
  const isHeld = analysis.progress.gates.firing.some(({ because }) =>
    because.some((reason) => reason.code === 'rating-unknown'),
  );
  const isOwn = view.people.some(({ staffId, waitsForRating }) => staffId === signedIn.staffId && waitsForRating);
  if (isSealed || !(isHeld || isOwn) || plateRatingKw(view.record) !== null) return null;
  return (
    <div className="run-strip" data-tone="ember" role="status">
      <span>
        <strong>
          The rated input on the plate is not known, and {isOwn ? 'your' : 'the'} licence has an upper limit.
        </strong>{' '}
        Nothing is lit before it was read, or before somebody works here whose licence has none.
      </span>
      <button type="button" className="run-button" onClick={() => setIsTyping(true)}>
        Type the rated input
      </button>
      {isTyping ? <PlateRatingDialog onClose={() => setIsTyping(false)} /> : null}
    </div>
  );
}
