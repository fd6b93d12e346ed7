import { type Affine, compose, IDENTITY, shift, stretch, turn } from './affine.ts';
import { numbersIn } from './svg-numbers.ts';

const skew = (angleDeg: number) => Math.tan((angleDeg * Math.PI) / 180);

function single(name: string, [p = 0, q, r, s = 0, t = 0, u = 0]: readonly number[]): Affine | null {
  switch (name) {
    case 'matrix':
      return { a: p, b: q ?? 0, c: r ?? 0, d: s, e: t, f: u };
    case 'translate':
      return shift(p, q ?? 0);
    case 'scale':
      return stretch(p, q ?? p);
    case 'rotate':
      return compose(shift(q ?? 0, r ?? 0), compose(turn(p), shift(-(q ?? 0), -(r ?? 0))));
    case 'skewX':
      return { ...IDENTITY, c: skew(p) };
    case 'skewY':
      return { ...IDENTITY, b: skew(p) };
    default:
      return null;
  }
}

/** @returns the map that a `transform` attribute gives (SVG 1.1, section 7.6); what is unknown in it changes nothing */
export function svgTransform(text: string | undefined): Affine {
  let all = IDENTITY;
  for (const [, name = '', list = ''] of (text ?? '').matchAll(/([a-zA-Z]{1,9})\s{0,9}\(([^()]*)\)/g)) {
    const one = single(name, numbersIn(list, 6));
    if (one) all = compose(all, one);
  }
  return all;
}
