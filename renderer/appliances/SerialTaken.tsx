/** The same maker and serial number stands somewhere already: shows where, since it is the wrong one of a pair or a slip. */
import type { ErrorsOf } from '../../electron/contract/index.ts';
import { errorWords } from '../kit/errorWords.ts';
import { Note } from '../kit/Note.tsx';
import { RouteLink } from '../RouteLink.tsx';

export function SerialTaken({
  data,
}: {
  readonly data: Extract<ErrorsOf<'appliances.update'>, { readonly code: 'serial-taken' }>['data'];
}) {
  return (
    <Note
      tone="ember"
      isSpoken
      action={
        <RouteLink to="appliance" params={{ applianceId: data.applianceId }}>
          Look at that one
        </RouteLink>
      }
    >
      {errorWords({ code: 'serial-taken', data })}
    </Note>
  );
}
