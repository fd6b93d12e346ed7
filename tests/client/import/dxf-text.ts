/** A thing of a drawing as code–value pairs. */
export type Pairs = readonly (readonly [code: number, value: string | number])[];

const lines = (pairs: Pairs) => pairs.map(([code, value]) => `${code}\n${value}\n`).join('');

/** A whole DXF text around things that are drawn. */
export function dxfText(
  entities: readonly Pairs[],
  { insunits, blocks = [] }: { insunits?: number; blocks?: readonly Pairs[] } = {},
): string {
  const header: Pairs = [
    [0, 'SECTION'],
    [2, 'HEADER'],
    [9, '$ACADVER'],
    [1, 'AC1015'],
    ...(insunits === undefined
      ? []
      : ([
          [9, '$INSUNITS'],
          [70, insunits],
        ] as const)),
    [0, 'ENDSEC'],
  ];
  const section = (name: string, things: readonly Pairs[]): Pairs => [
    [0, 'SECTION'],
    [2, name],
    ...things.flat(),
    [0, 'ENDSEC'],
  ];
  return lines([...header, ...section('BLOCKS', blocks), ...section('ENTITIES', entities), [0, 'EOF']]);
}

/** A light polyline. */
export const lwpolyline = (points: readonly (readonly [number, number])[], layer = '0', flags = 1): Pairs => [
  [0, 'LWPOLYLINE'],
  [8, layer],
  [90, points.length],
  [70, flags],
  ...points.flatMap(
    ([x, y]) =>
      [
        [10, x],
        [20, y],
      ] as const,
  ),
];

/** A straight line. */
export const line = (from: readonly [number, number], to: readonly [number, number], layer = '0'): Pairs => [
  [0, 'LINE'],
  [8, layer],
  [10, from[0]],
  [20, from[1]],
  [11, to[0]],
  [21, to[1]],
];

/** A circle. */
export const circle = (x: number, y: number, radius: number, layer = '0'): Pairs => [
  [0, 'CIRCLE'],
  [8, layer],
  [10, x],
  [20, y],
  [40, radius],
];
