/** How a phone lies, as its browser tells it: Euler angles Z-X'-Y'', degrees, alpha counter-clockwise. */
export interface Attitude {
  readonly alphaDeg: number;
  readonly betaDeg: number;
  readonly gammaDeg: number;
}

const RAD = Math.PI / 180;

/** Shorter than this on the floor a direction of the phone says nothing: it points up or down. */
const LEAST_LENGTH = 0.2;

/**
 * Where a phone that is held to be read points, clockwise from an arbitrary zero: the way its top and its back point,
 * laid on the floor and added, so that neither lying flat nor standing upright leaves it without a direction.
 * Turning the phone about the vertical by some degrees changes it by exactly those, however it is held.
 *
 * Null where top and back cancel out: held over the head, screen down.
 */
export function phoneHeadingDeg({ alphaDeg, betaDeg, gammaDeg }: Attitude): number | null {
  const [a, b, g] = [alphaDeg * RAD, betaDeg * RAD, gammaDeg * RAD];
  const top = { x: -Math.cos(b) * Math.sin(a), y: Math.cos(b) * Math.cos(a) };
  const back = {
    x: -Math.cos(a) * Math.sin(g) - Math.sin(a) * Math.sin(b) * Math.cos(g),
    y: -Math.sin(a) * Math.sin(g) + Math.cos(a) * Math.sin(b) * Math.cos(g),
  };
  const x = top.x + back.x;
  const y = top.y + back.y;
  if (!(Math.hypot(x, y) > LEAST_LENGTH)) return null;
  return (Math.atan2(x, y) / RAD + 360) % 360;
}
