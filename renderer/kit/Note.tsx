/** A framed line or two: plain, done (`fir`), caution (`caution`) or what burns, is refused or must stop (`ember`). */
import type { ReactNode } from 'react';

export type NoteTone = 'plain' | 'fir' | 'caution' | 'ember';

export function Note({
  tone = 'plain',
  title,
  action,
  children,
  isSpoken = false,
}: {
  readonly tone?: NoteTone;
  readonly title?: string;
  readonly action?: ReactNode;
  readonly children?: ReactNode;
  /** Read out by a screen reader when it appears. */
  readonly isSpoken?: boolean;
}) {
  return (
    <div className="lo-note" data-tone={tone} role={isSpoken ? (tone === 'ember' ? 'alert' : 'status') : undefined}>
      <div style={{ flex: 1 }}>
        {title ? <strong>{title}</strong> : null}
        {children ? <div>{children}</div> : null}
      </div>
      {action}
    </div>
  );
}
