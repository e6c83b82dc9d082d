/** A picture by the laptop's own camera, which then goes the same way as one from a file. Nothing where there is no camera. */
import { useState } from 'react';
import { CameraDialog } from './CameraDialog.tsx';
import { useHasCamera } from './useHasCamera.ts';

export function CameraButton({ onFiles }: { readonly onFiles: (files: readonly File[]) => void }) {
  const hasCamera = useHasCamera();
  const [isOpen, setIsOpen] = useState(false);
  if (!hasCamera) return null;
  return (
    <>
      <button type="button" className="run-button" onClick={() => setIsOpen(true)}>
        Take it with this laptop …
      </button>
      {isOpen ? (
        <CameraDialog
          onTaken={(file) => {
            setIsOpen(false);
            onFiles([file]);
          }}
          onClose={() => setIsOpen(false)}
        />
      ) : null}
    </>
  );
}
