/** Signing by mouse, finger or pen: even ink, dark on white in any theme, the last stroke or all of it taken back. */
import { type PointerEvent, useEffect, useRef } from 'react';
import { beginStroke, goOn, type Point, type Strokes, withoutLast } from './strokes.ts';

const WIDTH = 600;
const HEIGHT = 160;

export function SignaturePad({
  label,
  strokes,
  onStrokes,
}: {
  readonly label: string;
  readonly strokes: Strokes;
  readonly onStrokes: (change: (strokes: Strokes) => Strokes) => void;
}) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const isDrawing = useRef(false);
  useEffect(() => {
    const pen = canvas.current?.getContext('2d');
    if (pen) draw(pen, strokes);
  }, [strokes]);
  const pointAt = (event: PointerEvent<HTMLCanvasElement>): Point => {
    const box = event.currentTarget.getBoundingClientRect();
    return {
      x: ((event.clientX - box.left) / box.width) * WIDTH,
      y: ((event.clientY - box.top) / box.height) * HEIGHT,
    };
  };
  const lift = () => {
    isDrawing.current = false;
  };
  return (
    <div className="run-signature">
      <p className="run-card-hint">{label}</p>
      <canvas
        ref={canvas}
        width={WIDTH}
        height={HEIGHT}
        role="img"
        aria-label={strokes.length === 0 ? `${label}: empty` : `${label}: drawn`}
        onPointerDown={(event) => {
          // The box for the name keeps the keyboard while somebody draws.
          event.preventDefault();
          event.currentTarget.setPointerCapture(event.pointerId);
          isDrawing.current = true;
          const at = pointAt(event);
          onStrokes((before) => beginStroke(before, at));
        }}
        onPointerMove={(event) => {
          if (!isDrawing.current) return;
          const at = pointAt(event);
          onStrokes((before) => goOn(before, at));
        }}
        onPointerUp={lift}
        onPointerCancel={lift}
      />
      <div className="run-box-row">
        <button
          type="button"
          className="run-button"
          disabled={strokes.length === 0}
          onClick={() => onStrokes(withoutLast)}
        >
          Take back the last stroke
        </button>
        <button
          type="button"
          className="run-button"
          disabled={strokes.length === 0}
          onClick={() => onStrokes(() => [])}
        >
          Clear
        </button>
      </div>
    </div>
  );
}

/** As a picture for the record; null when the browser cannot make one. */
export async function signaturePicture(strokes: Strokes): Promise<File | null> {
  const canvas = document.createElement('canvas');
  canvas.width = WIDTH;
  canvas.height = HEIGHT;
  const pen = canvas.getContext('2d');
  if (pen === null) return null;
  draw(pen, strokes);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  return blob === null ? null : new File([blob], 'signature.png', { type: 'image/png' });
}

function draw(pen: CanvasRenderingContext2D, strokes: Strokes): void {
  pen.fillStyle = '#ffffff';
  pen.fillRect(0, 0, WIDTH, HEIGHT);
  pen.strokeStyle = '#141414';
  pen.fillStyle = '#141414';
  pen.lineWidth = 3;
  pen.lineCap = 'round';
  pen.lineJoin = 'round';
  for (const stroke of strokes) {
    const [first, ...rest] = stroke;
    if (first === undefined) continue;
    pen.beginPath();
    pen.moveTo(first.x, first.y);
    // A dot is a stroke too.
    if (rest.length === 0) pen.lineTo(first.x + 0.1, first.y);
    for (const { x, y } of rest) pen.lineTo(x, y);
    pen.stroke();
  }
}
