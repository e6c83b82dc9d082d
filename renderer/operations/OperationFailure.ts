/** A declared failure on its way through react-query, which knows failures only as thrown. */
import type { ErrorsOf, OperationName } from '../../electron/contract/index.ts';

export class OperationFailure<N extends OperationName = OperationName> extends Error {
  readonly failure: ErrorsOf<N>;

  constructor(failure: ErrorsOf<N>) {
    super(failure.code);
    this.name = 'OperationFailure';
    this.failure = failure;
  }
}
