/** The mark of something that does not fit; the words stand beside it. */
export function DoubtMark() {
  return (
    <svg className="lo-board-mark" width="14" height="14" viewBox="0 0 14 14" aria-hidden="true" focusable="false">
      <path d="M7 1 13 13H1Z" fill="currentColor" />
    </svg>
  );
}
