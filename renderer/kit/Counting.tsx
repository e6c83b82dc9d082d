/** That some packets' gaps are still being counted. */
export function Counting({ uncounted }: { readonly uncounted: number }) {
  if (uncounted === 0) return null;
  return (
    <p className="lo-faint" role="status">
      Counting what is missing in {uncounted} more …
    </p>
  );
}
