/** The make-safes of this appliance: opened with one key, shown while open. */
import { useCallback, useState } from 'react';
import type { OutputOf } from '../../../electron/contract/index.ts';
import type { RunView } from '../../../electron/contract/runs.ts';
import { useCore } from '../../operations/CoreAccess.tsx';
import { useOperation } from '../../operations/useOperation.ts';
import { saveErrorWords } from '../words/saveErrorWords.ts';

export type MakeSafe = OutputOf<'appliances.get'>['makeSafes'][number];

export type MakeSafes = {
  readonly applianceId: string;
  readonly list: readonly MakeSafe[];
  /** When the last one was closed: what a stop found before then may be read again. */
  readonly lastClosedAt: string | null;
  readonly isShown: boolean;
  /** Being opened, or refused by the store: acting comes first all the same. */
  readonly opening: { readonly what: string; readonly why: string | null } | null;
  readonly open: (what: string) => void;
  readonly show: () => void;
  readonly hide: () => void;
};

export function useMakeSafes(view: RunView): MakeSafes {
  const core = useCore();
  const applianceId = view.visit.jobs.find((job) => job.runId === view.runId)?.applianceId ?? '';
  const appliance = useOperation('appliances.get', { applianceId }, { isWanted: applianceId !== '' });
  const list = appliance.state === 'ready' ? appliance.value.makeSafes : [];
  const [isShown, setIsShown] = useState(false);
  const [opening, setOpening] = useState<MakeSafes['opening']>(null);
  const { visitId } = view;
  const { askAgain } = appliance;

  const open = useCallback(
    (what: string) => {
      setIsShown(true);
      setOpening({ what, why: null });
      void core.call('makeSafes.open', { applianceId, visitId, what: what.slice(0, 300) }).then((reply) => {
        setOpening(reply.ok ? null : { what, why: saveErrorWords(reply.error) });
        if (reply.ok) askAgain();
      });
    },
    [core, applianceId, visitId, askAgain],
  );
  const show = useCallback(() => setIsShown(true), []);
  const hide = useCallback(() => setIsShown(false), []);
  const closed = list.flatMap((one) => one.closedAt ?? []).sort();
  return { applianceId, list, lastClosedAt: closed.at(-1) ?? null, isShown, opening, open, show, hide };
}
