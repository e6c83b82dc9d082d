/** A small picture of a photo, made in the window: what is shown in lists need not be twelve megapixels each. */
import type { FileFound } from '../../electron/contract/wire.ts';

/** Twice the width of a picture in a list, for screens that are finer than their pixels say. */
const WIDTH_PX = 320;
const JPEG_QUALITY = 0.8;
/** What is smaller than this is shown as it is. */
export const SMALL_ENOUGH_BYTES = 80_000;

/** The right way up and without anything that the camera wrote into it. null: no picture that this window can open. */
export async function makeSmall({ bytes, mediaType }: FileFound): Promise<Blob | null> {
  let picture: ImageBitmap;
  try {
    const blob = new Blob([new Uint8Array(bytes)], { type: mediaType });
    picture = await createImageBitmap(blob, { resizeWidth: WIDTH_PX, resizeQuality: 'medium' });
  } catch {
    return null;
  }
  const canvas = document.createElement('canvas');
  canvas.width = picture.width;
  canvas.height = picture.height;
  canvas.getContext('2d')?.drawImage(picture, 0, 0);
  picture.close();
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', JPEG_QUALITY));
}

export async function toBase64(blob: Blob): Promise<string> {
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text);
}

let last: Promise<unknown> = Promise.resolve();

/** One after the other: forty photos opened at once would fill the memory of a small laptop. */
export function inTurn<T>(job: () => Promise<T>): Promise<T> {
  const done = last.then(job, job);
  last = done.catch(() => undefined);
  return done;
}
