/** Boxes whose text the store did not take, each with why and a way back to it. */
import { useRun } from '../state/RunContext.ts';

export function UnsavedStrip() {
  const { unsaved, active, goTo } = useRun();
  // The one that is open says it itself.
  const elsewhere = unsaved.list.filter((box) => box.itemKey !== active?.itemKey);
  if (elsewhere.length === 0) return null;
  return (
    <div className="run-strip" data-tone="ember" role="alert">
      {elsewhere.map((box) => (
        <span key={`${box.itemKey} ${box.box}`} className="run-strip-part">
          <strong>Not saved: {box.label}.</strong> {box.why}{' '}
          <button
            type="button"
            className="run-button"
            onClick={() => goTo({ stepKey: box.stepKey, itemKey: box.itemKey })}
          >
            Go to it
          </button>
        </span>
      ))}
    </div>
  );
}
