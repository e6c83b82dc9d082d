import { describe, expect, it } from 'vitest';
import { putEach, putPhoto, refusedBecause } from '../../../../renderer/run/items/takePhotos.ts';

describe('refusedBecause', () => {
  it.each([
    ['plate.jpg', 'image/jpeg'],
    ['plate.JPEG', ''],
    ['plate.png', 'image/png'],
  ])('takes %s', (name, type) => {
    expect(refusedBecause({ name, type })).toBeNull();
  });

  it.each([
    ['IMG_0042.HEIC', ''],
    ['IMG_0042', 'image/heif'],
  ])('says in plain words what to do about %s', (name, type) => {
    expect(refusedBecause({ name, type })).toMatch(/JPEG/);
  });

  it('takes nothing else', () => {
    expect(refusedBecause({ name: 'report.pdf', type: 'application/pdf' })).toBe(
      'Only JPEG and PNG pictures are taken.',
    );
  });
});

describe('putPhoto', () => {
  const picture = new File([new Uint8Array([1, 2, 3])], 'plate.png', {
    type: 'image/png',
    lastModified: 1_772_460_000_000,
  });

  it('hands over the bytes as they are, with the time the file was written', async () => {
    const outcome = await putPhoto(picture, async (file) => {
      expect([...file.bytes]).toEqual([1, 2, 3]);
      expect(file.takenAt).toBe('2026-03-02T14:00:00.000Z');
      return { ok: true, attachmentId: 'a-1', sha256: 'x' };
    });
    expect(outcome).toEqual({ ok: true, attachmentId: 'a-1' });
  });

  it('says which file was refused and why', async () => {
    const outcome = await putPhoto(picture, async () => ({ ok: false, code: 'type-refused' }));
    expect(outcome).toMatchObject({ ok: false, fileName: 'plate.png' });
  });
});

describe('putEach', () => {
  const named = (name: string) => new File([new Uint8Array([1])], name, { type: 'image/png' });
  const put = async ({ fileName }: { readonly fileName: string }) =>
    ({ ok: true, attachmentId: `id of ${fileName}`, sha256: 'x' }) as const;

  it('attaches one after the other, and ends at the first that fails, with its words', async () => {
    const attached: string[] = [];
    const attach = async (attachmentId: string) => {
      attached.push(attachmentId);
      return attachmentId === 'id of b.png' ? 'sealed meanwhile' : null;
    };
    expect(await putEach([named('a.png'), named('b.png'), named('c.png')], put, attach)).toBe('sealed meanwhile');
    expect(attached).toEqual(['id of a.png', 'id of b.png']);
    expect(await putEach([named('a.png'), named('d.heic')], put, attach)).toMatch(/^d\.heic: HEIC/);
  });
});
