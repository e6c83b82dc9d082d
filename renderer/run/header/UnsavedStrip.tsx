/** Boxes whose text the store did not take, each with why and a way back to it. */
import { useRun } from '../state/RunContext.ts';

export function UnsavedStrip() {
  const { unsaved, goTo } = useRun();
  if (unsaved.list.length === 0) return null;
  return (
    <div className="run-strip" data-tone="ember" role="alert">
      {unsaved.list.map((box) => (
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
