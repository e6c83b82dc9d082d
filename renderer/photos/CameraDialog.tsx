/** What the camera sees, and one key that takes it. The camera is let go of as soon as the dialog is gone. */
import { useEffect, useRef, useState } from 'react';
import { KeyHint } from '../kit/KeyHint.tsx';
import { Dialog } from '../run/stop/Dialog.tsx';

const JPEG_QUALITY = 0.92;
/** The finest the camera has, and the one that looks away from the person where there are two. */
const WANTED: MediaStreamConstraints = {
  audio: false,
  video: { facingMode: 'environment', width: { ideal: 4096 }, height: { ideal: 3072 } },
};

export function CameraDialog({
  onTaken,
  onClose,
}: {
  readonly onTaken: (file: File) => void;
  readonly onClose: () => void;
}) {
  const video = useRef<HTMLVideoElement>(null);
  const [isSeeing, setIsSeeing] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    let stream: MediaStream | null = null;
    let isGone = false;
    const letGo = () => {
      for (const track of stream?.getTracks() ?? []) track.stop();
    };
    navigator.mediaDevices.getUserMedia(WANTED).then(
      (opened) => {
        stream = opened;
        if (isGone || video.current === null) letGo();
        else video.current.srcObject = opened;
      },
      (error: unknown) => setTrouble(troubleWords(error)),
    );
    return () => {
      isGone = true;
      letGo();
    };
  }, []);
  const take = async () => {
    const file = video.current === null ? null : await pictureOf(video.current);
    if (file === null) setTrouble('The camera gave no picture. Try once more, or choose a file.');
    else onTaken(file);
  };
  return (
    <Dialog label="Take a picture" onEscape={onClose}>
      <form
        className="run-camera"
        onSubmit={(event) => {
          event.preventDefault();
          if (isSeeing) void take();
        }}
      >
        <div className="run-stop-head">
          <h2>Take a picture</h2>
          <button type="button" className="run-button" onClick={onClose}>
            Without one <KeyHint keys="Esc" />
          </button>
        </div>
        <video
          ref={video}
          muted
          autoPlay
          playsInline
          onPlaying={() => setIsSeeing(true)}
          aria-label="What the camera sees"
        />
        <div className="run-box-row">
          <button type="submit" className="run-button run-button-main" data-first aria-disabled={!isSeeing}>
            Take it <KeyHint keys="Enter" />
          </button>
          <span role="status">{trouble ?? (isSeeing ? '' : 'The camera is being opened …')}</span>
        </div>
      </form>
    </Dialog>
  );
}

/** As large as the camera gives it. null: nothing is seen yet. */
async function pictureOf(video: HTMLVideoElement): Promise<File | null> {
  const canvas = document.createElement('canvas');
  canvas.width = video.videoWidth;
  canvas.height = video.videoHeight;
  if (canvas.width === 0 || canvas.height === 0) return null;
  canvas.getContext('2d')?.drawImage(video, 0, 0);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', JPEG_QUALITY));
  if (blob === null) return null;
  const now = new Date();
  const name = `camera ${now.toISOString().slice(0, 19).replaceAll(':', '-')}.jpg`;
  return new File([blob], name, { type: 'image/jpeg', lastModified: now.getTime() });
}

/** The names of the standard (W3C Media Capture and Streams, getUserMedia). */
function troubleWords(error: unknown): string {
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'NotAllowedError')
    return 'The system does not let this program use the camera. Allow it in the system’s privacy settings, or choose a file.';
  if (name === 'NotReadableError') return 'Another program is using the camera. Close it there, or choose a file.';
  return 'The camera cannot be opened. Choose a file instead.';
}
