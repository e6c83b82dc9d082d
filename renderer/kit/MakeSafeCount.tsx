/** How many make-safes are open: nothing when none. */
export function MakeSafeCount({ count }: { readonly count: number }) {
  if (count === 0) return null;
  return (
    <span className="lo-verdict" data-tone="stop">
      {count === 1 ? 'make-safe open' : `${count} make-safes open`}
    </span>
  );
}
