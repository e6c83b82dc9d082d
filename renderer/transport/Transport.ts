/** How every screen reaches the core: typed by the contract, whichever host answers. */
import type { Call } from './call.ts';
import type { RawTransport } from './rawTransport.ts';

export type Transport = Omit<RawTransport, 'call'> & { readonly call: Call };
