/** How every screen reaches the core. Which host answers, the desktop shell or the loopback one, is decided once in main.tsx. */
import { createContext, type ReactNode, useContext } from 'react';
import type { Transport } from '../transport/Transport.ts';

const CoreContext = createContext<Transport | null>(null);

export function CoreAccess({ transport, children }: { readonly transport: Transport; readonly children: ReactNode }) {
  return <CoreContext value={transport}>{children}</CoreContext>;
}

export function useCore(): Transport {
  const transport = useContext(CoreContext);
  if (transport === null) throw new Error('a screen is shown outside CoreAccess');
  return transport;
}
