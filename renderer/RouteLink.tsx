/** A real link to a screen: opens with Enter, can be copied, says where it leads. */
import type { CSSProperties, ReactNode } from 'react';
import { hashFor, type RouteParams, type ScreenName } from './route.ts';

export function RouteLink<N extends ScreenName>({
  to,
  params,
  children,
  className = 'lo-link',
  isCurrent = false,
  style,
}: {
  readonly to: N;
  readonly params: RouteParams<N>;
  readonly children: ReactNode;
  readonly className?: string;
  readonly isCurrent?: boolean;
  readonly style?: CSSProperties;
}) {
  return (
    <a href={hashFor(to, params)} className={className} aria-current={isCurrent ? 'page' : undefined} style={style}>
      {children}
    </a>
  );
}
