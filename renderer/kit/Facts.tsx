/** Label and value, in two columns that line up. What is not known says so. */
import type { ReactNode } from 'react';

export type Fact = readonly [label: string, value: ReactNode];

export function Facts({ facts }: { readonly facts: readonly Fact[] }) {
  return (
    <dl className="lo-facts">
      {facts.map(([label, value]) => (
        <div key={label} style={{ display: 'contents' }}>
          <dt>{label}</dt>
          <dd>{value === null || value === '' ? <span className="lo-faint">not known</span> : value}</dd>
        </div>
      ))}
    </dl>
  );
}
