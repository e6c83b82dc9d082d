/** From a published sheet to a draft: its next revision, or a sheet of its own that begins like it. */
import { Button, Group, TextInput } from '@mantine/core';
import { useState } from 'react';
import type { ModelSheet } from '../../domain/procedure/modelSheet.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { useAct } from '../operations/useAct.ts';
import { goTo } from '../route.ts';

export function StartDraftPanel({ sheet }: { readonly sheet: ModelSheet }) {
  const start = useAct('sheetDrafts.start');
  const [title, setTitle] = useState('');
  const sheetId = keyFrom(title);
  const begin = async (asSheet: { readonly sheetId: string; readonly title: string } | null) => {
    const reply = await start.act({ sheetId: sheet.sheetId, revision: sheet.revision, asSheet });
    if (reply.ok) goTo('sheet-draft', { draftId: reply.value.draftId });
  };
  return (
    <Panel title="Write a sheet from this one">
      <ErrorText error={start.error} />
      <Group gap="md" align="end">
        <Button variant="default" loading={start.isBusy} onClick={() => void begin(null)}>
          New revision of this sheet
        </Button>
        <TextInput
          label="or a sheet of its own, called"
          autoComplete="off"
          value={title}
          onChange={(event) => setTitle(event.currentTarget.value)}
        />
        <Button
          variant="default"
          loading={start.isBusy}
          disabled={sheetId === ''}
          onClick={() => void begin({ sheetId, title: title.trim() })}
        >
          New sheet
        </Button>
      </Group>
    </Panel>
  );
}

/** `Our own sheet!` becomes `our-own-sheet`. */
export function keyFrom(title: string): string {
  return title
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/\p{M}/gu, '')
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')
    .slice(0, 80)
    .replace(/-$/, '');
}
