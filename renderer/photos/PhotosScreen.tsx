/** Photos from a camera in one go: taken in as they are, matched to the run by the time they were taken, put in place once looked at. */
import { Button, NativeSelect, Stack } from '@mantine/core';
import { useRef, useState } from 'react';
import { stepListOf, stepsOfList } from '../../domain/procedure/stepListOf.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import type { RunView } from '../../electron/contract/visits.ts';
import { Answer } from '../kit/Answer.tsx';
import { instantWords } from '../kit/dayWords.ts';
import { errorWords } from '../kit/errorWords.ts';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useCore } from '../operations/CoreAccess.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { Thumbnail } from '../run/items/Thumbnail.tsx';
import { putPhoto } from '../run/items/takePhotos.ts';
import { awayWords } from './awayWords.ts';

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
  const places = stepsOfList(view.sheet, stepListOf(view.record.kind, view.sheet)).flatMap((step) =>
    step.items.flatMap((item) =>
      item.kind === 'photo' ? [{ value: `${step.key} ${item.key}`, label: `${step.title}: ${item.label}` }] : [],
    ),
  );

  const take = async (files: readonly File[]) => {
    setIsBusy(true);
    const problems: string[] = [];
    const taken: string[] = [];
    for (const file of files) {
      const outcome = await putPhoto(file, core.putFile);
      if (outcome.ok) taken.push(outcome.attachmentId);
      else problems.push(`${outcome.fileName}: ${outcome.why}`);
    }
    if (taken.length > 0) {
      const reply = await match.act({ visitId, runId, attachmentIds: taken });
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

  const outside = rows.filter(({ when }) => when === 'outside');
  return (
    <Stack gap="md">
      <p style={{ margin: 0 }}>
        The pictures are kept as the camera made them. What goes out in a packet says nothing of where they were taken.
      </p>
      <input
        ref={input}
        type="file"
        accept="image/jpeg,image/png,.jpg,.jpeg,.png,.heic,.heif"
        multiple
        hidden
        aria-label="Photos"
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])];
          event.currentTarget.value = '';
          if (files.length > 0) void take(files);
        }}
      />
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
      {outside.length === 0 ? null : (
        <Note tone="caution" title="The camera’s clock does not fit this visit" isSpoken>
          By its own clock {outside.length === 1 ? 'one picture was' : `${outside.length} pictures were`} taken{' '}
          {awayWords(outside[0]?.awayS ?? 0)}. They are matched by their order only: look at each before it is put in
          place.
        </Note>
      )}
      {rows.length === 0 ? null : (
        <Panel title="Which is which">
          <Stack gap="md">
            {rows.map((row) => (
              <div key={row.attachmentId} className="lo-line-fields">
                <Thumbnail attachmentId={row.attachmentId} label={row.fileName} />
                <p style={{ margin: 0 }}>
                  {row.takenAt === null ? 'time unknown' : instantWords(row.takenAt, view.record.site.timeZone)}
                  <br />
                  <span className="lo-faint">
                    {row.isFromCamera ? 'by the camera’s clock' : 'the file’s own date'}
                    {row.when === 'outside' ? `; ${awayWords(row.awayS)}` : ''}
                  </span>
                </p>
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
              </div>
            ))}
            <div>
              <Button loading={isBusy} onClick={() => void put()}>
                Put them in place
              </Button>
            </div>
          </Stack>
        </Panel>
      )}
    </Stack>
  );
}

function asRow(matched: Matched): Row {
  return { ...matched, chosen: matched.place === null ? '' : `${matched.place.stepKey} ${matched.place.itemKey}` };
}
