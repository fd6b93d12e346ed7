import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { darkBehind } from '../../../core/light/frame/dark-behind.ts';
import { frameStats } from '../../../core/light/frame/frame-stats.ts';
import { lightsInFrame, veilStopsOf } from '../../../core/light/frame/lights-in-frame.ts';
import { litSides } from '../../../core/light/frame/lit-sides.ts';
import { framePicture } from '../../../core/light/frame/picture.ts';
import type { FrameScene, FrameStand } from '../../../core/light/frame/scene.ts';
import { HIT_KINDS } from '../../../core/light/frame/shell.ts';
import { silhouette } from '../../../core/light/frame/silhouette.ts';
import { createSight } from '../../../core/light/room/sight.ts';
import { box, evenLamp, feature, HALL, raysOf, SCENE } from './frame-scenes.ts';

const EXPOSURE = { iso: 1600, fNumber: 2, shutterS: 1 / 160 };
const SIGHT = createSight(HALL);

describe('numbers of a frame', () => {
  const bar = { ...feature('bar', box(7, 1, 4, 1), 1.2), background: 'wanted' as const };
  const aside = { ...feature('aside', box(2, 1, 2, 1), 1.2), background: 'unwanted' as const };
  const front = feature('front', box(8.5, 8.5, 1, 0.4), 0.9);
  const rays = raysOf(
    { ...SCENE, features: [bar, aside, front], frame: { ...SCENE.frame, focalMm: 24 } },
    96,
    64,
  );

  it('share and level of what is in the picture, and what is behind the subject', () => {
    const levels = new Float64Array(rays.count).fill(-1);
    const { features } = frameStats(rays, levels);
    const byId = new Map(features.map((one) => [one.id, one]));
    expect([...byId.keys()].sort()).toEqual(['aside', 'bar', 'front']);
    expect(byId.get('bar')?.behindFraction).toBeGreaterThan(0.001);
    expect(byId.get('bar')?.behindFraction).toBeLessThan(byId.get('bar')?.frameFraction ?? 0);
    expect(byId.get('aside')).toMatchObject({ background: 'unwanted', behindFraction: 0, levelStops: -1 });
    expect(byId.get('front')?.behindFraction).toBe(0);
  });

  it('the background is what is farther than the subject; the subject has a level of its own', () => {
    const levels = Float64Array.from(rays.kinds, (kind, ray) => {
      if (kind === HIT_KINDS.head || kind === HIT_KINDS.body) return 0;
      const [x, y] = [rays.positions[3 * ray] ?? 0, rays.positions[3 * ray + 1] ?? 0];
      return Math.hypot(x - 9, y - 11) > 4 ? -2 : 3;
    });
    const stats = frameStats(rays, levels);
    expect(stats).toMatchObject({ backgroundStops: -2, subjectStops: 0, darkFraction: 0 });
    const near = Array.from(levels).filter((level) => level === 3).length / rays.count;
    expect(stats.brightFraction).toBeCloseTo(near, 12);
    expect(stats.backgroundFraction).toBeGreaterThan(0.5);
    expect(stats.backgroundFraction).toBeLessThan(1 - near);
  });

  it('shares and mean follow the levels', () => {
    const level = fc.double({ min: -20, max: 8, noNaN: true });
    fc.assert(
      fc.property(fc.array(level, { minLength: rays.count, maxLength: rays.count }), (list) => {
        const stats = frameStats(rays, Float64Array.from(list));
        const share = (test: (one: number) => boolean) => list.filter(test).length / list.length;
        expect(stats.darkFraction).toBeCloseTo(
          share((one) => one < -4),
          12,
        );
        expect(stats.brightFraction).toBeCloseTo(
          share((one) => one > 2.5),
          12,
        );
        const mean = list.reduce((sum, one) => sum + 2 ** one, 0) / list.length;
        expect(stats.meanStops).toBeCloseTo(Math.log2(mean), 9);
      }),
      { numRuns: 5 },
    );
  });

  it('dark behind a light counts what is farther than it, and black', () => {
    const levels = Float64Array.from({ length: rays.count }, (_, ray) => (ray % 2 === 0 ? -5 : -3));
    const near = darkBehind(rays, levels, { x: 9, y: 9 });
    const far = darkBehind(rays, levels, { x: 9, y: 1 });
    expect(near.beyondFraction).toBeGreaterThan(far.beyondFraction);
    expect(near.darkFraction / near.beyondFraction).toBeCloseTo(0.5, 1);
    expect(darkBehind(rays, levels, { x: 9, y: -90 })).toEqual({ beyondFraction: 0, darkFraction: 0 });
  });
});

describe('lights in the picture', () => {
  const stand = (x: number, y: number, heightM = 2.2): FrameStand => ({
    id: 'back',
    letter: 'B',
    spot: { x, y },
    heightM,
    umbrellaRadiusM: null,
  });
  const judge = (scene: FrameScene, luxSeconds = 1) => {
    const at = scene.stands[0] ?? stand(0, 0);
    const lamp = evenLamp(luxSeconds, at.spot.x, at.spot.y, at.heightM);
    return lightsInFrame(scene, [{ standId: 'back', lamp, powerStops: -4 }], EXPOSURE)[0];
  };

  it('in, outside and hidden', () => {
    expect(judge({ ...SCENE, stands: [stand(10.5, 2)] })).toMatchObject({
      hiddenBy: null,
      inFrame: { part: 'head' },
    });
    expect(judge({ ...SCENE, stands: [stand(17, 9)] })).toMatchObject({ judged: 'outside', veilStops: null });
    // 5 m behind the subject, at eye height, the head hides it.
    expect(judge({ ...SCENE, stands: [stand(9, 2, 1.6)] })).toMatchObject({
      judged: 'hidden',
      hiddenBy: 'the subject',
    });
    const screen = { ...feature('screen', box(10, 4, 2, 0.2), 3), blocksLight: true };
    const hidden = { ...SCENE, features: [screen], stands: [stand(11.5, 2)] };
    expect(judge(hidden)).toMatchObject({ judged: 'hidden', hiddenBy: 'The screen' });
    const airy = { ...hidden, features: [{ ...screen, blocksLight: false }] };
    expect(judge(airy)?.hiddenBy).toBeNull();
  });

  it('a wall hides what is round the corner', () => {
    const outline = [
      { x: 0, y: 0 },
      { x: 18, y: 0 },
      { x: 18, y: 6 },
      { x: 11, y: 6 },
      { x: 11, y: 12 },
      { x: 0, y: 12 },
    ];
    const scene = { ...SCENE, room: { ...HALL, outline }, camera: { spot: { x: 9, y: 11.5 }, heightM: 1.6 } };
    const wide = { ...scene, frame: { ...SCENE.frame, focalMm: 18 } };
    expect(judge({ ...wide, stands: [stand(15, 5)] })).toMatchObject({
      judged: 'hidden',
      hiddenBy: 'a wall',
    });
    expect(judge({ ...wide, stands: [stand(12, 3)] })?.hiddenBy).toBeNull();
  });

  it('a lamp that sends nothing to the lens is dark, and so is one that nobody knows', () => {
    const scene = { ...SCENE, stands: [stand(10.5, 2)] };
    expect(judge(scene, 0)).toMatchObject({ judged: 'dark', veilStops: null });
    expect(lightsInFrame(scene, [], EXPOSURE)).toMatchObject([{ judged: 'dark' }]);
    expect(
      lightsInFrame({ ...scene, camera: { ...scene.camera, spot: scene.subject.spot } }, [], EXPOSURE),
    ).toEqual([]);
  });

  it('haze grows a stop with each stop of power and of speed, and a stop as the aperture opens one', () => {
    const light = fc.double({ min: 0.01, max: 1000, noNaN: true });
    const base = (lux: number, change = {}) =>
      veilStopsOf(lux, { ...EXPOSURE, ...change }, 50, 864) ?? Number.NaN;
    fc.assert(
      fc.property(light, (lux) => {
        expect(base(2 * lux) - base(lux)).toBeCloseTo(1, 9);
        expect(base(lux, { iso: 3200 }) - base(lux)).toBeCloseTo(1, 9);
        expect(base(lux, { fNumber: Math.SQRT2 }) - base(lux)).toBeCloseTo(1, 9);
        // By hand: 0.25 % of lux through a pupil of 490.87 mm² over 864 mm², against 10/1600.
        expect(base(lux)).toBeCloseTo(Math.log2((0.0025 * lux * 490.8739) / 864 / 0.00625), 6);
      }),
    );
  });
});

describe('the small picture', () => {
  it('mid-grey is 118, every level keeps its order, white is white and black black', () => {
    const levels = Float64Array.from([-20, -4, -1, 0, 1, 2, 2.5, 9]);
    const picture = [...framePicture(levels, 4, 2)];
    expect(picture[3]).toBe(118);
    expect(picture).toEqual([...picture].sort((a, b) => a - b));
    expect([picture[0], picture[7], picture[6]]).toEqual([0, 255, 255]);
    expect(framePicture(levels, 3, 3)[8]).toBe(0);
    expect(framePicture(levels, 0.5, 3)).toHaveLength(0);
  });

  it('the silhouette lies where the rays meet the subject', () => {
    const rays = raysOf(SCENE, 200, 133);
    const drawn = silhouette(SCENE);
    if (drawn.kind === 'cannot') throw new Error(drawn.reason);
    const range = (list: readonly number[]) => [Math.min(...list), Math.max(...list)] as const;
    const met = (kind: number) => Array.from(rays.kinds.keys()).filter((ray) => rays.kinds[ray] === kind);
    for (const [part, kind] of [
      [drawn.head, HIT_KINDS.head],
      [drawn.body, HIT_KINDS.body],
    ] as const) {
      const [left, right] = range(part.map(({ asideFraction }) => asideFraction));
      const [metLeft, metRight] = range(met(kind).map((ray) => ((ray % 200) + 0.5) / 200));
      expect(Math.abs(left - metLeft)).toBeLessThan(0.01);
      expect(Math.abs(right - metRight)).toBeLessThan(0.01);
    }
    const top = Math.min(...drawn.head.map(({ downFraction }) => downFraction));
    const metTop = Math.min(...met(HIT_KINDS.head).map((ray) => (Math.floor(ray / 200) + 0.5) / 133));
    expect(Math.abs(top - metTop)).toBeLessThan(0.015);
    expect(silhouette({ ...SCENE, room: { ...HALL, ceilingM: Number.NaN } })).toMatchObject({
      kind: 'cannot',
    });
  });

  it('each light falls on its side of the head: key from the front, back light as a rim', () => {
    const key = { standId: 'key', lamp: evenLamp(2, 6.9, 9.1, 2.4), powerStops: -1 };
    const back = { standId: 'back', lamp: evenLamp(3, 12, 2, 2.4), powerStops: -3 };
    const sides = litSides(SCENE, [back, key], SIGHT, EXPOSURE);
    expect(sides).toMatchObject([
      { standId: 'key', from: 'front', side: 'camera-left' },
      { standId: 'back', from: 'rim', side: 'camera-right' },
    ]);
    expect(sides[0]?.litStops).toBeCloseTo(Math.log2((1 * 1600) / 250 / 4), 9);
    // A light 45° aside leaves a quarter of the visible half dark; one from behind lights an edge.
    expect(sides[0]?.litFraction).toBeGreaterThan(0.7);
    expect(sides[0]?.litFraction).toBeLessThan(0.76);
    expect(sides[1]?.litFraction).toBeLessThan(0.25);
    const none = { ...key, lamp: evenLamp(0) };
    expect(litSides(SCENE, [none], SIGHT, EXPOSURE)).toEqual([]);
  });
});
