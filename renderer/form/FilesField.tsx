/** Files that go with a form, each in the store as soon as it is chosen; only which they are is part of what is typed. */
import { Button, Group, Input } from '@mantine/core';
import { useRef, useState } from 'react';
import { useCore } from '../operations/CoreAccess.tsx';
import { Thumbnail } from '../run/items/Thumbnail.tsx';
import { putPhoto } from '../run/items/takePhotos.ts';
import type { FieldOf } from './fieldKeys.ts';
import { patchOf } from './patchOf.ts';
import type { DraftForm } from './useDraftForm.ts';

export type StoredFile = { readonly attachmentId: string; readonly name: string };

const PICTURES = 'image/jpeg,image/png,.jpg,.jpeg,.png';

export function FilesField<V extends object>({
  form,
  name,
  label,
  description,
  takes,
  isNeeded = false,
}: {
  readonly form: DraftForm<V>;
  readonly name: FieldOf<V, readonly StoredFile[]>;
  readonly label: string;
  readonly description?: string;
  /** A paper may be a PDF too. */
  readonly takes: 'photos' | 'papers';
  readonly isNeeded?: boolean;
}) {
  const core = useCore();
  const input = useRef<HTMLInputElement>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const files = form.values[name] as readonly StoredFile[];
  const keep = (next: readonly StoredFile[]) => form.set(patchOf(name, next));

  const take = async (chosen: readonly File[]) => {
    setRefused(null);
    let kept = files;
    for (const file of chosen) {
      const reply = isPdf(file) ? await putPdf(file, core.putFile) : await putPhoto(file, core.putFile);
      if (!reply.ok) return setRefused(`${file.name}: ${reply.why}`);
      kept = [...kept, { attachmentId: reply.attachmentId, name: file.name }];
      keep(kept);
    }
  };
  const error = refused ?? form.errors[name];
  return (
    <Input.Wrapper
      className="lo-wide"
      label={label}
      labelElement="div"
      description={description}
      required={isNeeded}
      error={error}
    >
      <Group gap="sm" mt={4}>
        {files.map((file) => (
          <Group key={file.attachmentId} gap="xs">
            {/\.pdf$/i.test(file.name) ? null : <Thumbnail attachmentId={file.attachmentId} label={file.name} />}
            <span>{file.name}</span>
            <Button
              variant="subtle"
              aria-label={`Without ${file.name}`}
              onClick={() => keep(files.filter((one) => one !== file))}
            >
              Take out
            </Button>
          </Group>
        ))}
        <input
          ref={input}
          type="file"
          accept={takes === 'papers' ? `${PICTURES},application/pdf,.pdf` : PICTURES}
          multiple
          hidden
          aria-label={label}
          onChange={(event) => {
            const chosen = [...(event.currentTarget.files ?? [])];
            event.currentTarget.value = '';
            void take(chosen);
          }}
        />
        <Button
          variant="default"
          aria-label={`${label}: choose`}
          aria-invalid={error !== undefined}
          onClick={() => input.current?.click()}
        >
          {files.length === 0 ? 'Choose a file …' : 'Another file …'}
        </Button>
      </Group>
    </Input.Wrapper>
  );
}

function isPdf(file: Pick<File, 'name' | 'type'>): boolean {
  return file.type === 'application/pdf' || /\.pdf$/i.test(file.name);
}

async function putPdf(file: File, putFile: Parameters<typeof putPhoto>[1]) {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const reply = await putFile({ bytes, mediaType: 'application/pdf', fileName: file.name, takenAt: null });
  return reply.ok
    ? ({ ok: true, attachmentId: reply.attachmentId } as const)
    : ({ ok: false, why: `not taken (${reply.code.replaceAll('-', ' ')})` } as const);
}
