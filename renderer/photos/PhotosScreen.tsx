/** Photos from a camera in one go: taken in as they are, matched to the run by the time they were taken, put in place once looked at. */
import { Button, Group, NativeSelect, Stack } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import { stepListOf, stepsOfList } from '../../domain/procedure/stepListOf.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import type { RunView } from '../../electron/contract/runs.ts';
import { Answer } from '../kit/Answer.tsx';
import { instantWords } from '../kit/dayWords.ts';
import { errorWords } from '../kit/errorWords.ts';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PhotoFiles } from '../kit/PhotoFiles.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useCore } from '../operations/CoreAccess.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { Thumbnail } from '../run/items/Thumbnail.tsx';
import { putPhoto } from '../run/items/takePhotos.ts';
import { useUnsaved } from '../shell/LeaveGuard.tsx';
import { ClockNotes } from './ClockNotes.tsx';
import { clockWords } from './clockWords.ts';
import './photos.css';

export function PhotosScreen({ visitId, runId }: { readonly visitId: string; readonly runId: string }) {
  const found = useOperation('visits.getRun', { visitId, runId });
  return (
    <Screen
      title="Photos from a camera"
      crumbs={
        <RouteLink to="run" params={{ visitId, runId }}>
          Run
        </RouteLink>
      }
    >
      <Answer of={found}>{(view) => <Photos view={view} />}</Answer>
    </Screen>
  );
}

type Matched = OutputOf<'photos.match'>[number];
type Row = Matched & { readonly chosen: string };

function Photos({ view }: { readonly view: RunView }) {
  const { visitId, runId } = view;
  const core = useCore();
  const match = useAct('photos.match');
  const attach = useAct('visits.attachPhoto');
  const input = useRef<HTMLInputElement>(null);
  const [rows, setRows] = useState<readonly Row[]>([]);
  const [refused, setRefused] = useState<readonly string[]>([]);
  const [isBusy, setIsBusy] = useState(false);
  const [inPlace, setInPlace] = useState(0);
  const list = useRef<HTMLUListElement>(null);
  const done = useRef<HTMLParagraphElement>(null);
  const places = stepsOfList(view.sheet, stepListOf(view.record.kind, view.sheet)).flatMap((step) => {
    const items = step.items.flatMap((item) =>
      item.kind === 'photo' ? [{ value: `${step.key} ${item.key}`, label: item.label }] : [],
    );
    return items.length === 0 ? [] : [{ group: step.title, items }];
  });
  useUnsaved(rows.length === 0 ? null : 'The photos are stored, but not put in place yet.');
  useEffect(() => {
    if (rows.length > 0) list.current?.querySelector('select')?.focus();
  }, [rows.length]);
  useEffect(() => {
    if (inPlace > 0) done.current?.focus();
  }, [inPlace]);

  const take = async (files: readonly File[]) => {
    setIsBusy(true);
    const problems: string[] = [];
    const taken: { readonly attachmentId: string; readonly fileAt: string }[] = [];
    for (const file of files) {
      const outcome = await putPhoto(file, core.putFile);
      if (outcome.ok)
        taken.push({ attachmentId: outcome.attachmentId, fileAt: new Date(file.lastModified).toISOString() });
      else problems.push(`${outcome.fileName}: ${outcome.why}`);
    }
    if (taken.length > 0) {
      const reply = await match.act({
        visitId,
        runId,
        attachmentIds: taken.map(({ attachmentId }) => attachmentId),
        fileTimes: Object.fromEntries(taken.map(({ attachmentId, fileAt }) => [attachmentId, fileAt])),
      });
      if (reply.ok) setRows((before) => [...before, ...reply.value.map(asRow)]);
      else problems.push(errorWords(reply.error));
    }
    setRefused(problems);
    setIsBusy(false);
  };

  const put = async () => {
    setIsBusy(true);
    const problems: string[] = [];
    const left: Row[] = [];
    for (const row of rows) {
      const [stepKey = '', itemKey = ''] = row.chosen.split(' ');
      const problem = row.chosen === '' ? null : await putInPlace(stepKey, itemKey, row.attachmentId);
      if (row.chosen === '' || problem !== null) left.push(row);
      if (problem !== null) problems.push(`${row.fileName}: ${problem}`);
    }
    setRows(left);
    setInPlace(rows.length - left.length);
    setRefused(problems);
    setIsBusy(false);
  };

  const putInPlace = async (stepKey: string, itemKey: string, attachmentId: string): Promise<string | null> => {
    if (!view.openedSteps.includes(stepKey)) {
      const opened = await core.call('visits.openStep', { visitId, runId, stepKey });
      if (!opened.ok) return errorWords(opened.error);
    }
    const reply = await attach.act({ visitId, runId, stepKey, itemKey, attachmentId });
    return reply.ok ? null : errorWords(reply.error);
  };

  return (
    <Stack gap="md">
      <p style={{ margin: 0 }}>
        The pictures are kept as the camera made them. What goes out in a packet says nothing of where they were taken.
      </p>
      <PhotoFiles ref={input} label="Photos" onFiles={(files) => void take(files)} />
      <div>
        <Button loading={isBusy} disabled={view.sealedSha256 !== null} onClick={() => input.current?.click()}>
          Choose the photos
        </Button>
      </div>
      {refused.length === 0 ? null : (
        <Note tone="ember" title="Not all of them could be taken" isSpoken>
          <ul>
            {refused.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </Note>
      )}
      <ClockNotes rows={rows} />
      {inPlace === 0 ? null : (
        <p ref={done} tabIndex={-1} className="photos-done" role="status">
          {inPlace === 1 ? 'One photo is' : `${inPlace} photos are`} in place.{' '}
          <RouteLink to="run" params={{ visitId, runId }}>
            Back to the run
          </RouteLink>
        </p>
      )}
      {rows.length === 0 ? null : (
        <Panel title="Which is which">
          <Stack gap="md">
            <ul ref={list} className="photos-rows">
              {rows.map((row) => (
                <li key={row.attachmentId} data-doubtful={row.when !== 'during'}>
                  <Thumbnail attachmentId={row.attachmentId} label={row.fileName} />
                  <div>
                    <NativeSelect
                      label={`${row.fileName} is`}
                      value={row.chosen}
                      data={[{ value: '', label: 'none of these' }, ...places]}
                      onChange={(event) => {
                        const chosen = event.currentTarget.value;
                        setRows((before) =>
                          before.map((one) => (one.attachmentId === row.attachmentId ? { ...one, chosen } : one)),
                        );
                      }}
                    />
                    <p>
                      {row.takenAt === null ? 'Time unknown' : instantWords(row.takenAt, view.record.site.timeZone)}
                      <br />
                      <span className="lo-faint">{clockWords(row)}</span>
                    </p>
                  </div>
                </li>
              ))}
            </ul>
            <Group gap="sm">
              <Button loading={isBusy} onClick={() => void put()}>
                Put them in place
              </Button>
              <Button variant="default" onClick={() => setRows([])}>
                Leave the rest out
              </Button>
            </Group>
          </Stack>
        </Panel>
      )}
    </Stack>
  );
}

function asRow(matched: Matched): Row {
  return { ...matched, chosen: matched.place === null ? '' : `${matched.place.stepKey} ${matched.place.itemKey}` };
}
