import { useEffect, useRef, useState } from 'preact/hooks';
import type { Pixel } from '../../../core/plan/traced.ts';
import type { PicturePlan } from '../../import/plan-file.ts';

const LONGEST_PX = 1400;

/** Draws the picture as large as a phone needs it, and says how large that is. */
function draw(
  canvas: HTMLCanvasElement,
  { picture, widthPx, heightPx }: PicturePlan,
): { width: number; height: number } {
  const scale = Math.min(1, LONGEST_PX / Math.max(widthPx, heightPx));
  canvas.width = Math.round(widthPx * scale);
  canvas.height = Math.round(heightPx * scale);
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return { width: canvas.width, height: canvas.height };
}

const path = (points: readonly Pixel[], end: string): string =>
  points.length === 0 ? '' : `M${points.map(({ x, y }) => `${x} ${y}`).join('L')}${end}`;

/** How far an arrow key moves the cross, as a part of the picture's longer side; with Shift, and without. */
const LONG_STEP = 0.05;
const STEP = 0.005;
const WAYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

const within = (value: number, most: number) => Math.min(most, Math.max(0, value));

/** The picture with the points on it. A finger presses the points; arrow keys move a cross, and Enter puts one there. */
export function TracedPicture(props: {
  picture: PicturePlan;
  points: readonly Pixel[];
  put: (at: Pixel) => void;
}) {
  const { picture, points, put } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const [cross, setCross] = useState<Pixel | null>(null);
  const [{ width, height }, setSize] = useState({ width: 1, height: 1 });
  useEffect(() => {
    if (canvas.current) setSize(draw(canvas.current, picture));
  }, [picture]);
  const middle = { x: width / 2, y: height / 2 };
  const onClick = (event: MouseEvent) => {
    // Enter and Space click too, without a place.
    if (event.detail === 0) {
      put(cross ?? middle);
      return;
    }
    const box = canvas.current?.getBoundingClientRect();
    if (!box) return;
    setCross(null);
    put({
      x: within(((event.clientX - box.left) / box.width) * width, width),
      y: within(((event.clientY - box.top) / box.height) * height, height),
    });
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const way = WAYS[event.key];
    if (!way) return;
    event.preventDefault();
    event.stopPropagation();
    const by = Math.max(width, height) * (event.shiftKey ? LONG_STEP : STEP);
    const from = cross ?? middle;
    setCross({ x: within(from.x + way[0] * by, width), y: within(from.y + way[1] * by, height) });
  };
  const [corners, dotPx] = [points.slice(2), Math.max(width, height) / 60];
  return (
    <button
      type="button"
      class="trace"
      aria-label="Picture: press a point, or move the cross with the arrow keys and press Enter"
      onClick={onClick}
      onKeyDown={onKeyDown}
    >
      <canvas ref={canvas} />
      <svg viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        <title>Points pressed</title>
        <path class="trace-length" d={path(points.slice(0, 2), '')} />
        <path class="trace-room" d={path(corners, corners.length > 2 ? 'Z' : '')} />
        {points.map(({ x, y }) => (
          <circle key={`${x}:${y}`} cx={x} cy={y} r={dotPx} />
        ))}
        {cross && <path d={`M${cross.x} 0V${height}M0 ${cross.y}H${width}`} />}
      </svg>
    </button>
  );
}
