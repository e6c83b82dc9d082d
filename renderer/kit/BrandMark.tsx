/** Our mark: a flame between two uprights on a base line, the boiler lit off. The same drawing as assets/icon.svg. */
export function BrandMark({ side = 32 }: { readonly side?: number }) {
  return (
    <svg width={side} height={side} viewBox="0 0 64 64" aria-hidden="true" focusable="false">
      <rect width="64" height="64" rx="12" fill="#175637" />
      <path d="M12 47h40M18 47V31M46 47V31" stroke="#faf6ee" strokeWidth="5" strokeLinecap="round" />
      <path d="M32 9c8 9 11 14 11 20a11 11 0 0 1-22 0c0-3 1-6 3-8 0 3 1 5 3 6 0-6 2-12 5-18z" fill="#ff9468" />
      <path d="M32 25c3 3 4 5 4 7a4 4 0 0 1-8 0c0-2 1-4 4-7z" fill="#175637" />
    </svg>
  );
}
