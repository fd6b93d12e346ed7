/** Pixels as the QR reader wants them: four bytes each, red, green, blue, opacity. */
export interface Pixels {
  readonly data: Uint8ClampedArray;
  readonly width: number;
  readonly height: number;
}

/** Draws modules as squares of some pixels, dark ones black. */
function modulePixels(
  isDark: (row: number, column: number) => boolean,
  rows: number,
  columns: number,
  scale = 4,
): Pixels {
  const [width, height] = [columns * scale, rows * scale];
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      if (isDark(Math.floor(y / scale), Math.floor(x / scale)))
        data.fill(0, (y * width + x) * 4, (y * width + x) * 4 + 3);
    }
  }
  return { data, width, height };
}

/** Draws an SVG that is a light ground and one dark path of squares, `M x,y h s v s h -s z` each. */
export function svgPixels(svg: string): Pixels {
  const [, side = '0'] = /viewBox="0 0 (\d+) \d+"/.exec(svg) ?? [];
  const squares = [...svg.matchAll(/M(\d+),(\d+)h(\d+)v\d+h-\d+z/g)].map((match) =>
    match.slice(1).map(Number),
  );
  const module = squares[0]?.[2] ?? 1;
  const dark = new Set(squares.map(([x = 0, y = 0]) => `${y / module}/${x / module}`));
  const size = Number(side) / module;
  return modulePixels((row, column) => dark.has(`${row}/${column}`), size, size);
}

const ESCAPE = '\u001b';
const SET = new RegExp(`^${ESCAPE}\\[38;5;16;48;5;231m`); // black signs on white
const RESET = new RegExp(`${ESCAPE}\\[0m$`);

/** Draws the lines of a terminal that hold a QR code in half blocks, black on white as the lines themselves set it. */
export function terminalPixels(text: string): Pixels {
  const lines = text
    .split('\n')
    .filter((line) => SET.test(line) && RESET.test(line))
    .map((line) => [...line.replace(SET, '').replace(RESET, '')]);
  const halves = (sign: string | undefined) => [sign === '█' || sign === '▀', sign === '█' || sign === '▄'];
  const isDark = (row: number, column: number) =>
    halves(lines[Math.floor(row / 2)]?.[column])[row % 2] ?? false;
  return modulePixels(isDark, lines.length * 2, lines[0]?.length ?? 0);
}
