/** A sheet of paper on the desk: one subject under its own heading, with what can be done beside it. */
import { type ReactNode, useId } from 'react';

export function Panel({
  title,
  action,
  level = 2,
  children,
}: {
  readonly title: string;
  readonly action?: ReactNode;
  readonly level?: 2 | 3;
  readonly children: ReactNode;
}) {
  const headingId = useId();
  const Heading = level === 2 ? 'h2' : 'h3';
  return (
    <section className="lo-panel" aria-labelledby={headingId}>
      <div className="lo-panel-head">
        <Heading id={headingId}>{title}</Heading>
        {action}
      </div>
      {children}
    </section>
  );
}
