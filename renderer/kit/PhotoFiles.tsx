/** The file picker of photos, out of sight: a button opens it, and the same file can be chosen twice in a row. */
import type { RefObject } from 'react';

export function PhotoFiles({
  ref,
  label,
  onFiles,
}: {
  readonly ref: RefObject<HTMLInputElement | null>;
  readonly label: string;
  readonly onFiles: (files: readonly File[]) => void;
}) {
  return (
    <input
      ref={ref}
      type="file"
      accept="image/jpeg,image/png,.jpg,.jpeg,.png,.heic,.heif"
      multiple
      hidden
      aria-label={label}
      onChange={(event) => {
        const files = [...(event.currentTarget.files ?? [])];
        event.currentTarget.value = '';
        if (files.length > 0) onFiles(files);
      }}
    />
  );
}
