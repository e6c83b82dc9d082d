/** One screen: its title as the page's heading and the window's title, what it leads back to, and what can be done here. */
import { type ReactNode, useEffect } from 'react';

export function Screen({
  title,
  crumbs,
  action,
  children,
}: {
  readonly title: string;
  /** Links to what it belongs to. */
  readonly crumbs?: ReactNode;
  readonly action?: ReactNode;
  readonly children: ReactNode;
}) {
  useEffect(() => {
    document.title = `${title} – Lightoff`;
  }, [title]);
  return (
    <div className="lo-screen">
      <div className="lo-screen-head">
        <div>
          {crumbs ? (
            <nav aria-label="Belongs to" style={{ display: 'flex', gap: '0.75rem' }}>
              {crumbs}
            </nav>
          ) : null}
          <h1>{title}</h1>
        </div>
        {action}
      </div>
      {children}
    </div>
  );
}
