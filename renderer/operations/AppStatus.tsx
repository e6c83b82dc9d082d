/** What every screen may ask about the app without waiting: the company, today, the signed-in person and their units. */
import { createContext, type ReactNode, useContext } from 'react';
import type { UnitSystem } from '../../domain/quantity/preferredUnit.ts';
import type { StaffRole } from '../../domain/vocabulary/people.ts';
import type { Person } from '../../electron/contract/app.ts';
import type { OutputOf } from '../../electron/contract/index.ts';

export type AppStatusValue = OutputOf<'app.status'>;

const StatusContext = createContext<AppStatusValue | null>(null);

export function AppStatus({ status, children }: { readonly status: AppStatusValue; readonly children: ReactNode }) {
  return <StatusContext value={status}>{children}</StatusContext>;
}

export function useAppStatus(): AppStatusValue {
  const status = useContext(StatusContext);
  if (status === null) throw new Error('a screen is shown before the app status is known');
  return status;
}

export function useSignedIn(): Person {
  const { signedIn } = useAppStatus();
  if (signedIn === null) throw new Error('a screen for signed-in people is shown to nobody');
  return signedIn;
}

/** Roles only decide what is offered; whether it is allowed is decided in the core. */
export function useHasRole(...roles: readonly StaffRole[]): boolean {
  const { signedIn } = useAppStatus();
  return signedIn !== null && roles.some((role) => signedIn.roles.includes(role));
}

export function useUnitSystem(): UnitSystem {
  return useAppStatus().unitSystem;
}
