import type { Spot } from '../../../core/geometry/spot.ts';

const path = (points: readonly Spot[]) => points.map(({ x, y }, i) => `${i ? 'L' : 'M'}${x} ${y}`).join('');

/** Rings nearer together than this would be one blot. */
const APART_PX = 16;

/** The bends that get a ring: round a round table there are many. */
function ringed(legs: readonly Spot[]): Spot[] {
  const rings: Spot[] = [];
  for (const spot of legs.slice(1, -1)) {
    const last = rings.at(-1);
    if (!last || Math.hypot(last.x - spot.x, last.y - spot.y) >= APART_PX) rings.push(spot);
  }
  return rings;
}

/**
 * A way on the plan: the leg that the arrow shows thick, the rest thin, a ring at each bend. Where there is no way the
 * straight line in broken strokes, and a ring where one can get to.
 *
 * @param legs points of the screen, px
 */
export function WayLine(props: { legs: readonly Spot[]; isNone: boolean; nearest: Spot | null }) {
  const { legs, isNone, nearest } = props;
  if (isNone)
    return (
      <g data-way="none">
        <path class="way-line is-none" d={path(legs)} />
        {nearest && <circle class="way-nearest" cx={nearest.x} cy={nearest.y} r="9" />}
      </g>
    );
  return (
    <g data-way={legs.length > 2 ? 'bends' : 'straight'}>
      <path class="way-line is-rest" d={path(legs.slice(1))} />
      <path class="way-line" d={path(legs.slice(0, 2))} />
      {ringed(legs).map(({ x, y }) => (
        <circle key={`${x} ${y}`} class="way-bend" cx={x} cy={y} r="5" />
      ))}
    </g>
  );
}
