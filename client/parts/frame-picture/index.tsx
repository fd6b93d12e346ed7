import { useEffect, useRef } from 'preact/hooks';
import './style.css';

/** A small picture as grey values, row by row from the upper left, sRGB. */
export interface GreyPicture {
  readonly columns: number;
  readonly rows: number;
  readonly grey: Uint8ClampedArray;
}

/** Paints grey values one to a pixel; the browser enlarges and smooths them. */
function paint(canvas: HTMLCanvasElement, { columns, rows, grey }: GreyPicture): void {
  canvas.width = columns;
  canvas.height = rows;
  const context = canvas.getContext('2d');
  if (!context) return;
  const image = context.createImageData(columns, rows);
  for (let index = 0; index < columns * rows; index++) {
    const value = grey[index] ?? 0;
    image.data.set([value, value, value, 255], index * 4);
  }
  context.putImageData(image, 0, 0);
}

/**
 * What the camera sees, as the numbers have it.
 *
 * @param said the same in words, for who cannot see it
 */
export function FramePicture(props: {
  picture: GreyPicture;
  said: string;
  children?: preact.ComponentChildren;
}) {
  const { picture, said, children } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    if (canvas.current) paint(canvas.current, picture);
  }, [picture]);
  return (
    <div
      class="frame-picture"
      role="img"
      aria-label={said}
      style={{ aspectRatio: `${picture.columns} / ${picture.rows}` }}
    >
      <canvas ref={canvas} />
      {children}
    </div>
  );
}
