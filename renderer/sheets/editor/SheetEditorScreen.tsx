/** Writing a sheet: part by part, checked while it is typed, kept field by field, shown as the technician will see it, published once nothing is wrong. */
import { Button, Group } from '@mantine/core';
import { useEffect, useState } from 'react';
import type { OutputOf } from '../../../electron/contract/index.ts';
import { Answer } from '../../kit/Answer.tsx';
import { ConfirmUndo } from '../../kit/ConfirmUndo.tsx';
import { ErrorText } from '../../kit/ErrorText.tsx';
import { Panel } from '../../kit/Panel.tsx';
import { Screen } from '../../kit/Screen.tsx';
import { useAct } from '../../operations/useAct.ts';
import { useOperation } from '../../operations/useOperation.ts';
import { RouteLink } from '../../RouteLink.tsx';
import { goTo, replaceWith } from '../../route.ts';
import { valueAt } from './checkDraft.ts';
import { DraftContext } from './DraftContext.ts';
import { DraftFields } from './DraftField.tsx';
import { leadTo } from './leadTo.ts';
import { ProblemList } from './ProblemList.tsx';
import { SheetPreview } from './SheetPreview.tsx';
import { SECTIONS, sectionOfPath } from './sections.ts';
import './editor.css';
import { useSheetDraft } from './useSheetDraft.ts';

type EditorPlace = {
  readonly part: string | null;
  /** The field that is to have the keyboard. */
  readonly field: string | null;
};

export function SheetEditorScreen({ draftId, part, field }: EditorPlace & { readonly draftId: string }) {
  const found = useOperation('sheetDrafts.get', { draftId });
  if (found.state === 'ready') return <SheetEditor key={draftId} loaded={found.value} part={part} field={field} />;
  return (
    <Screen title="Sheet in the making" crumbs={<SheetsLink />}>
      <Answer of={found}>{() => null}</Answer>
    </Screen>
  );
}

const PREVIEW = 'preview';

function SheetEditor({ loaded, part, field }: EditorPlace & { readonly loaded: OutputOf<'sheetDrafts.get'> }) {
  const draft = useSheetDraft(loaded);
  const publish = useAct('sheetDrafts.publish');
  const discard = useAct('sheetDrafts.discard');
  const { draftId } = loaded;
  const title = valueAt(draft.body, ['title']);
  const section = SECTIONS.find(({ key }) => key === part) ?? SECTIONS[0];
  const isPreview = part === PREVIEW;
  const [wanted, setWanted] = useState(field);
  useEffect(() => {
    if (wanted === null) return;
    return leadTo(wanted, () => setWanted(null));
  }, [wanted]);

  const goToPart = (key: string, path: string | null = null) => {
    draft.leave();
    replaceWith('sheet-draft', { draftId, part: key, field: path });
  };
  const goToField = (path: string) => {
    // The same field a second time is no change of place.
    if (path === field) setWanted(path);
    goToPart(sectionOfPath(path)?.key ?? SECTIONS[0]?.key ?? '', path);
  };
  return (
    <DraftContext value={{ ...draft, wanted }}>
      <Screen
        title={typeof title === 'string' && title !== '' ? title : 'Sheet without a title'}
        crumbs={<SheetsLink />}
        action={
          <Group gap="sm">
            <Button variant="default" disabled={!draft.canUndo} onClick={draft.undo}>
              Take back the last change
            </Button>
            <Button
              loading={publish.isBusy}
              disabled={draft.problems.length > 0}
              onClick={async () => {
                const reply = await publish.act({ draftId, editCount: await draft.settled() });
                if (reply.ok) goTo('sheet', { sheetId: reply.value.sheetId });
              }}
            >
              Publish
            </Button>
          </Group>
        }
      >
        <p className="lo-faint sheet-draft-words">
          A draft, begun from {loaded.fromSheetId} {loaded.fromRevision}. Each field is kept as you leave it
          {draft.isSaving ? ' – keeping it now …' : ''}. Visits under way keep their revision.
        </p>
        <ErrorText error={draft.error} />
        <ErrorText error={publish.error} />
        <ErrorText error={discard.error} />
        <div className="sheet-editor">
          <nav aria-label="Parts of the sheet" className="sheet-parts">
            {SECTIONS.map(({ key, title: partTitle, fields }) => {
              const count = draft.problems.filter(({ path }) => fields.some(({ name }) => isWithin(path, name))).length;
              return (
                <button
                  key={key}
                  type="button"
                  aria-current={!isPreview && key === section?.key ? 'page' : undefined}
                  onClick={() => goToPart(key)}
                >
                  {partTitle}
                  {count === 0 ? null : <span className="sheet-problem"> {count} to put right</span>}
                </button>
              );
            })}
            <button type="button" aria-current={isPreview ? 'page' : undefined} onClick={() => goToPart(PREVIEW)}>
              Preview
            </button>
          </nav>
          <div className="sheet-part-shown">
            {isPreview ? (
              <Panel title="As the technician will see it">
                <SheetPreview body={draft.body} />
              </Panel>
            ) : section === undefined ? null : (
              <Panel title={section.title}>
                <DraftFields key={section.key} path={[]} fields={section.fields} />
              </Panel>
            )}
            <Panel title={draft.problems.length === 0 ? 'To put right' : `To put right: ${draft.problems.length}`}>
              <ProblemList problems={draft.problems} onGo={goToField} />
            </Panel>
            {draft.doubts.length === 0 ? null : (
              <Panel title={`To look at: ${draft.doubts.length}`}>
                <p className="lo-faint">The sheet can be published as it is.</p>
                <ProblemList problems={draft.doubts} onGo={goToField} />
              </Panel>
            )}
            <div>
              <ConfirmUndo
                label="Throw the draft away"
                confirmLabel="Throw it away"
                isBusy={discard.isBusy}
                onConfirm={async () => {
                  const reply = await discard.act({ draftId });
                  if (reply.ok) goTo('sheets', {});
                }}
              >
                Nothing of it is published. It can be taken up again from the list of sheets.
              </ConfirmUndo>
            </div>
          </div>
        </div>
      </Screen>
    </DraftContext>
  );
}

function SheetsLink() {
  return (
    <RouteLink to="sheets" params={{}}>
      Model sheets
    </RouteLink>
  );
}

function isWithin(path: string, name: string): boolean {
  return path === name || path.startsWith(`${name}.`);
}
