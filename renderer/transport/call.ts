/** The typed question to the core: the operation's name decides what goes in, what comes back and what may fail. */
import type { InputOf, OperationName, ReplyOf } from '../../electron/contract/index.ts';
import type { RawTransport } from './rawTransport.ts';

export type Call = <N extends OperationName>(name: N, input: InputOf<N>) => Promise<ReplyOf<N>>;

export function createCall(transport: RawTransport): Call {
  return async <N extends OperationName>(name: N, input: InputOf<N>): Promise<ReplyOf<N>> => {
    // The core parses every output against the same contract before it answers.
    const reply: unknown = await transport.call(name, input);
    return reply as ReplyOf<N>;
  };
}
