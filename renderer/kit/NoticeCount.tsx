/** How many recalls or stop-use notices are not settled: nothing when none. */
export function NoticeCount({ count }: { readonly count: number }) {
  if (count === 0) return null;
  return (
    <span className="lo-verdict" data-tone="stop">
      {count === 1 ? 'notice not settled' : `${count} notices not settled`}
    </span>
  );
}
