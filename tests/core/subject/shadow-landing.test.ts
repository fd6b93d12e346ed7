import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ShadowRoom, shadowLanding } from '../../../core/light/subject/shadow-landing.ts';

const ROOM: ShadowRoom = {
  outline: [
    { x: 0, y: 0 },
    { x: 12, y: 0 },
    { x: 12, y: 8 },
    { x: 0, y: 8 },
  ],
  ceilingM: 3,
  blockers: [],
};
const HEAD = { x: 6, y: 4, z: 1.6 };
const box = (x0: number, x1: number, heightM: number) => ({
  id: 'p',
  name: 'Pillar',
  outline: [
    { x: x0, y: 3 },
    { x: x1, y: 3 },
    { x: x1, y: 5 },
    { x: x0, y: 5 },
  ],
  heightM,
  reflectance: 0.5,
});
const coordinate = (most: number) => fc.double({ min: 0.2, max: most, noNaN: true });
const light = fc.record({
  x: coordinate(11.8),
  y: coordinate(7.8),
  z: fc.double({ min: 1.61, max: 2.9, noNaN: true }),
});

describe('where the shadow of the head falls', () => {
  it('on the line from the light through the head, on a surface of the room, no farther than the wall', () => {
    fc.assert(
      fc.property(light, (from) => {
        const landing = shadowLanding({ light: from, diameterM: 1, head: HEAD, room: ROOM });
        if (landing.kind !== 'lands') {
          expect(landing.reason).toBe('light-on-head');
          return;
        }
        const { spot, heightM, behindM } = landing;
        // Three points on one line: the cross product of the two ways is nothing.
        const a = [HEAD.x - from.x, HEAD.y - from.y, HEAD.z - from.z] as const;
        const b = [spot.x - HEAD.x, spot.y - HEAD.y, heightM - HEAD.z] as const;
        const scale = Math.hypot(...a) * Math.max(1, Math.hypot(...b));
        expect(Math.abs(a[0] * b[1] - a[1] * b[0]) / scale).toBeLessThan(1e-9);
        expect(Math.abs(a[1] * b[2] - a[2] * b[1]) / scale).toBeLessThan(1e-9);
        expect(Math.hypot(b[0], b[1])).toBeCloseTo(behindM, 9);
        expect(landing.penumbraM).toBeCloseTo(Math.hypot(...b) / Math.hypot(...a), 9);
        const gaps = [spot.x, 12 - spot.x, spot.y, 8 - spot.y];
        expect(Math.min(...gaps)).toBeGreaterThan(-1e-9);
        if (landing.surface.kind === 'floor') expect(heightM).toBe(0);
        else expect(Math.abs(Math.min(...gaps))).toBeLessThan(1e-9);
      }),
    );
  });

  it('a higher light throws it nearer or lower', () => {
    const at = (z: number) =>
      shadowLanding({ light: { x: 3.5, y: 4, z }, diameterM: 0, head: HEAD, room: ROOM });
    const [low, middle, high] = [at(1.8), at(2.4), at(2.9)];
    expect(low).toMatchObject({ surface: { kind: 'wall', wall: 1 }, behindM: 6, penumbraM: 0 });
    expect(middle).toMatchObject({ surface: { kind: 'floor' }, heightM: 0 });
    if (low.kind !== 'lands' || middle.kind !== 'lands' || high.kind !== 'lands')
      throw new Error('no shadow');
    expect(low.heightM).toBeCloseTo(1.6 - (6 * 0.2) / 2.5, 9);
    expect(middle.behindM).toBeCloseTo((1.6 * 2.5) / 0.8, 9);
    expect(high.behindM).toBeLessThan(middle.behindM);
  });

  it('on the side of a pillar, over a low box on the floor behind it, or on the top of one', () => {
    const through = (blocker: ReturnType<typeof box>) =>
      shadowLanding({
        light: { x: 3.5, y: 4, z: 2.4 },
        diameterM: 0.5,
        head: HEAD,
        room: { ...ROOM, blockers: [blocker] },
      });
    // The ray falls 0.32 m a metre: 0.96 m high at x 8, 0.64 m at x 9.
    expect(through(box(8, 9, 2.5))).toMatchObject({ surface: { kind: 'blocker', blocker: 0 }, behindM: 2 });
    expect(through(box(8, 9, 0.5))).toMatchObject({ surface: { kind: 'floor' } });
    const top = through(box(8, 9, 0.8));
    expect(top).toMatchObject({ surface: { kind: 'blocker', blocker: 0 } });
    expect(top).toHaveProperty('behindM', expect.closeTo(0.8 / 0.32, 9));
    expect(top).toHaveProperty('heightM', expect.closeTo(0.8, 9));
    // One between light and head does not catch the head's shadow.
    expect(through(box(4, 5, 2.5))).toMatchObject({ surface: { kind: 'floor' } });
  });

  it('straight under a light overhead; level light meets the wall at the height of the head', () => {
    expect(shadowLanding({ light: { ...HEAD, z: 2.6 }, diameterM: 1, head: HEAD, room: ROOM })).toMatchObject(
      {
        surface: { kind: 'floor' },
        behindM: 0,
        penumbraM: 1.6,
      },
    );
    expect(
      shadowLanding({ light: { x: 2, y: 4, z: 1.6 }, diameterM: 1, head: HEAD, room: ROOM }),
    ).toMatchObject({ surface: { kind: 'wall' }, heightM: 1.6, spot: { x: 12, y: 4 } });
  });

  it('none, with the reason', () => {
    const of = (over: Partial<Parameters<typeof shadowLanding>[0]>) =>
      shadowLanding({ light: { x: 2, y: 4, z: 1.8 }, diameterM: 1, head: HEAD, room: ROOM, ...over });
    expect(of({ light: { x: 2, y: 4, z: 1.2 } })).toEqual({ kind: 'none', reason: 'light-below-head' });
    expect(of({ light: HEAD })).toEqual({ kind: 'none', reason: 'light-on-head' });
    expect(of({ head: { ...HEAD, x: 14 } })).toEqual({ kind: 'none', reason: 'head-outside' });
    expect(of({ room: { ...ROOM, ceilingM: 1 } })).toEqual({ kind: 'none', reason: 'over-the-walls' });
  });
});
