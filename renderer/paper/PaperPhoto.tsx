/** A photo the paper says was taken: chosen from the camera's files, put in place as in the run. */
import { Button, Group } from '@mantine/core';
import { useRef, useState } from 'react';
import type { RunView } from '../../electron/contract/runs.ts';
import { errorWords } from '../kit/errorWords.ts';
import { PhotoFiles } from '../kit/PhotoFiles.tsx';
import { useCore } from '../operations/CoreAccess.tsx';
import { useAct } from '../operations/useAct.ts';
import { RouteLink } from '../RouteLink.tsx';
import { putEach } from '../run/items/takePhotos.ts';

export function PaperPhoto({
  view,
  stepKey,
  itemKey,
  label,
  onOpenStep,
  onAttached,
}: {
  readonly view: Pick<RunView, 'visitId' | 'runId'>;
  readonly stepKey: string;
  readonly itemKey: string;
  readonly label: string;
  /** Why the step cannot be opened; null: it is open. */
  readonly onOpenStep: () => Promise<string | null>;
  readonly onAttached: () => void;
}) {
  const { visitId, runId } = view;
  const core = useCore();
  const attach = useAct('visits.attachPhoto');
  const input = useRef<HTMLInputElement>(null);
  const [isBusy, setIsBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);

  const take = async (files: readonly File[]) => {
    setIsBusy(true);
    setProblem(null);
    const why = (await onOpenStep()) ?? (await putAll(files));
    setIsBusy(false);
    if (why === null) onAttached();
    else setProblem(why);
  };
  const putAll = (files: readonly File[]) =>
    putEach(files, core.putFile, async (attachmentId) => {
      const reply = await attach.act({ visitId, runId, stepKey, itemKey, attachmentId });
      return reply.ok ? null : errorWords(reply.error);
    });
  return (
    <>
      <PhotoFiles ref={input} label={label} onFiles={(files) => void take(files)} />
      <Group gap="sm">
        <Button variant="default" loading={isBusy} onClick={() => input.current?.click()}>
          Choose the photo<span className="lo-hidden">: {label}</span>
        </Button>
        <RouteLink to="photos" params={{ visitId, runId }}>
          Several from a camera
        </RouteLink>
      </Group>
      {problem === null ? null : (
        <p className="paper-problem" role="alert">
          {problem}
        </p>
      )}
    </>
  );
}
