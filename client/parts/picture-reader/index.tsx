import { useRef, useState } from 'preact/hooks';
import { type PictureTarget, stopsFromPixels } from '../../../core/light/picture-level.ts';
import { overWords } from '../../words/frame-words.ts';
import { Choice } from '../choice/index.tsx';
import { FileKey } from '../file-key/index.tsx';
import { openPicture } from './open-picture.ts';
import './style.css';

const TARGETS: readonly (readonly [PictureTarget, string])[] = [
  ['grey-card', 'Grey card'],
  ['pale-skin', 'Pale skin'],
  ['medium-skin', 'Medium skin'],
  ['dark-skin', 'Dark skin'],
];
/** The piece that is read, as a part of the picture's width: a cheek in a half-length portrait. */
const PIECE = 0.02;

interface Touched {
  readonly x: number;
  readonly y: number;
}

const TROUBLE = {
  'burnt-out': 'Burnt out there: touch a darker place, or take the frame again darker.',
  'too-dark': 'Too dark there to tell.',
  'no-pixels': 'Nothing there: touch inside the picture.',
} as const;

/** The piece of the picture under a touch, as pixels. */
function pieceAt(canvas: HTMLCanvasElement, { x, y }: Touched): Uint8ClampedArray {
  const size = Math.max(3, Math.round(canvas.width * PIECE));
  const left = Math.min(canvas.width - size, Math.max(0, Math.round(x * canvas.width - size / 2)));
  const top = Math.min(canvas.height - size, Math.max(0, Math.round(y * canvas.height - size / 2)));
  const context = canvas.getContext('2d', { willReadFrequently: true });
  return context?.getImageData(left, top, size, size).data ?? new Uint8ClampedArray();
}

/**
 * Reads how far over or under a picture is where it is touched. The file stays on this phone: only the number is
 * kept.
 */
export function PictureReader({ record }: { record: (stops: number) => void }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [said, setSaid] = useState<string | null>(null);
  const [isOpen, setOpen] = useState(false);
  const [target, setTarget] = useState<PictureTarget>('grey-card');
  const [touched, setTouched] = useState<Touched | null>(null);
  const choose = async (file: File) => {
    if (!canvas.current) return;
    setTouched(null);
    setSaid('Opening the picture …');
    const trouble = await openPicture(file, canvas.current);
    setOpen(trouble === null);
    setSaid(trouble);
  };
  const level = touched && canvas.current ? stopsFromPixels(pieceAt(canvas.current, touched), target) : null;
  const touch = (event: PointerEvent) => {
    const box = (event.currentTarget as Element).getBoundingClientRect();
    setTouched({ x: (event.clientX - box.left) / box.width, y: (event.clientY - box.top) / box.height });
  };
  return (
    <div class="picture-reader">
      <FileKey word="Choose a picture from this phone" accept="image/*" take={(file) => void choose(file)} />
      {said && <p role="status">{said}</p>}
      <div class="picture" hidden={!isOpen} onPointerDown={touch}>
        <canvas ref={canvas} />
        {touched && <i class="touched" style={{ left: `${touched.x * 100}%`, top: `${touched.y * 100}%` }} />}
      </div>
      {isOpen && (
        <>
          <Choice name="What is touched" options={TARGETS} value={target} choose={setTarget} />
          <p class="quiet">
            A grey card is best. Skin differs from face to face, and the camera’s own picture style bends the
            scale: it counts less than a meter.
          </p>
          {!touched && <p role="status">Touch the card, or the lit cheek.</p>}
          {level && !level.ok && <p role="alert">{TROUBLE[level.reason]}</p>}
          {level?.ok && (
            <button type="button" class="main-key" onClick={() => record(level.stops)}>
              {`Keep: ${overWords(level.stops)}`}
            </button>
          )}
        </>
      )}
    </div>
  );
}
