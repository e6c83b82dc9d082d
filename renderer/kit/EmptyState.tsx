/** An empty screen says what belongs there and how it gets there. */
import type { ReactNode } from 'react';

export function EmptyState({
  title,
  children,
  action,
}: {
  /** `No customers yet` */
  readonly title: string;
  /** What belongs here and how it gets here. */
  readonly children: ReactNode;
  readonly action?: ReactNode;
}) {
  return (
    <div style={{ padding: '1.5rem 0', maxWidth: '42rem' }}>
      <p style={{ fontWeight: 600, margin: 0 }}>{title}</p>
      <p className="lo-faint" style={{ margin: '0.25rem 0 0' }}>
        {children}
      </p>
      {action ? <div style={{ marginBlockStart: '1rem' }}>{action}</div> : null}
    </div>
  );
}
