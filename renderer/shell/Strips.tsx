/** What everybody must see on top of every screen: the demo, a lost core, a data folder in a bad place. */
import { Button } from '@mantine/core';
import { useEffect, useState } from 'react';
import { instantWords } from '../kit/dayWords.ts';
import { COPY_FAILED } from '../kit/errorWords.ts';
import type { AppStatusValue } from '../operations/AppStatus.tsx';
import { useCore } from '../operations/CoreAccess.tsx';
import { useAct } from '../operations/useAct.ts';
import { goTo } from '../route.ts';

export function Strips({ status }: { readonly status: AppStatusValue }) {
  return (
    <section aria-label="Notices">
      <ConnectionStrip />
      {status.isDemo ? <DemoStrip /> : null}
      {status.copyTrouble === null ? null : (
        <div className="lo-strip" data-tone="ember">
          {copyTroubleWords(status.copyTrouble)}
        </div>
      )}
      {status.warnings.map((warning) => (
        <div key={warning} className="lo-strip" data-tone={isMild(warning) ? undefined : 'ember'}>
          {warningWords(warning, status.dataFolder)}
        </div>
      ))}
    </section>
  );
}

export function ConnectionStrip() {
  const core = useCore();
  const [state, setState] = useState(core.connection());
  useEffect(() => core.onConnection(setState), [core]);
  if (state === 'online' || state === 'connecting') return null;
  return (
    <div className="lo-strip" data-tone="ember" role="alert">
      {state === 'locked-out'
        ? 'This page is no longer let in. Open the address that the program printed when it started.'
        : 'The program’s core does not answer. What you type is kept; it tries again by itself.'}
    </div>
  );
}

function DemoStrip() {
  const leave = useAct('app.leaveDemo');
  return (
    <div className="lo-strip">
      <strong>Demo.</strong>
      <span style={{ flex: 1 }}>Invented people and boilers in a store of its own; your own data is untouched.</span>
      <Button
        variant="default"
        loading={leave.isBusy}
        onClick={async () => {
          const reply = await leave.act({});
          if (reply.ok) goTo('today', {});
        }}
      >
        Leave the demo
      </Button>
    </div>
  );
}

/** What is wrong with the store itself does not go away by trying again: the way back is named. */
function copyTroubleWords({ at, why }: NonNullable<AppStatusValue['copyTrouble']>): string {
  const isOfStore = why === 'integrity' || why === 'damaged' || why === 'foreign-keys' || why === 'seal-chain';
  return `No backup could be made (${instantWords(at)}): ${COPY_FAILED[why]}. ${
    isOfStore
      ? 'Nothing recorded from now on is in any backup. See Backups for the newest good one.'
      : 'It is tried again every hour; see Backups.'
  }`;
}

function isMild(warning: AppStatusValue['warnings'][number]): boolean {
  return warning === 'no-backup-today' || warning === 'list-under-way';
}

function warningWords(warning: AppStatusValue['warnings'][number], dataFolder: string): string {
  switch (warning) {
    case 'network-folder':
      return `The data lies on a network drive (${dataFolder}). Two computers writing there at once can damage it: move it to this computer’s own disk.`;
    case 'synchronised-folder':
      return `The data lies in a synchronised folder (${dataFolder}). Synchronising a store in use can damage it: move it out of there.`;
    case 'clock-before-last-change':
      return 'This computer’s clock is earlier than the last change on file. Set the clock before recording waits or dates.';
    case 'no-backup-today':
      return 'No backup has been made today yet.';
    case 'backup-does-not-hold':
      return 'A backup was tried out and cannot be gone back to: see Backups, and make a new one now.';
    case 'second-place-behind':
      return 'The second place of the backups has not been reached for a day or more: plug it in or see Backups.';
    case 'list-under-way':
      return 'A list is just being taken in or out. Everything can be looked at; what is saved meanwhile waits for it.';
    case 'list-cut-off':
      return 'The program ended while a list was being taken in or out, and nothing of that was done. See Import and export.';
  }
}
