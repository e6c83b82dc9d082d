/** The usual caution, short, where the hand is: for gas, carbon monoxide, hot water, electricity. */
import type { ReactNode } from 'react';
import { Note } from './Note.tsx';

export function Caution({ children }: { readonly children: ReactNode }) {
  return (
    <Note tone="caution">
      <strong>Caution. </strong>
      {children}
    </Note>
  );
}
