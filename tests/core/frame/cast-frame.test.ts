import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contains } from '../../../core/geometry/polygon.ts';
import { rotate } from '../../../core/geometry/spot.ts';
import { createView } from '../../../core/geometry/view.ts';
import { castFrame, type FrameRays } from '../../../core/light/frame/cast-frame.ts';
import { frameProblem } from '../../../core/light/frame/frame-problem.ts';
import type { FrameScene } from '../../../core/light/frame/scene.ts';
import { HIT_KINDS } from '../../../core/light/frame/shell.ts';
import { roofHeightM } from '../../../core/light/room/roof.ts';
import type { Roof } from '../../../core/light/room/room-model.ts';
import { box, feature, HALL, raysOf, SCENE } from './frame-scenes.ts';

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const inHall = fc.record({ x: within(0.5, 17.5), y: within(0.5, 11.5) });
const scene = fc
  .record({
    camera: inHall,
    subject: inHall,
    cameraM: within(0.3, 3),
    eyeM: within(0.5, 3.5),
    focalMm: within(14, 120),
  })
  .filter(({ camera, subject }) => Math.hypot(camera.x - subject.x, camera.y - subject.y) > 0.6)
  .map(
    ({ camera, subject, cameraM, eyeM, focalMm }): FrameScene => ({
      ...SCENE,
      camera: { spot: camera, heightM: cameraM },
      subject: { spot: subject, eyeM, facingDeg: 0 },
      frame: { ...SCENE.frame, focalMm },
    }),
  );

function pointOf({ positions }: FrameRays, ray: number) {
  return { x: positions[3 * ray] ?? 0, y: positions[3 * ray + 1] ?? 0, z: positions[3 * ray + 2] ?? 0 };
}

const isPerson = (kind: number | undefined) => kind === HIT_KINDS.head || kind === HIT_KINDS.body;

/** Slow twin for a box room: the way to the nearest of six planes, from the slab test. */
function toWallsM(from: number[], to: number[], sizes: number[]): number {
  const way = to.map((value, axis) => value - (from[axis] ?? 0));
  const length = Math.hypot(...way);
  return Math.min(
    ...way.map((part, axis) => {
      const unit = part / length;
      if (unit === 0) return Number.POSITIVE_INFINITY;
      return ((unit > 0 ? (sizes[axis] ?? 0) : 0) - (from[axis] ?? 0)) / unit;
    }),
  );
}

describe('rays through the frame', () => {
  it('meet the walls of a box where plane geometry says', () => {
    fc.assert(
      fc.property(scene, (given) => {
        const rays = raysOf(given, 9, 7);
        const { spot, heightM } = given.camera;
        for (let ray = 0; ray < rays.count; ray += 1) {
          if (isPerson(rays.kinds[ray])) continue;
          const { x, y, z } = pointOf(rays, ray);
          const wantedM = toWallsM([spot.x, spot.y, heightM], [x, y, z], [18, 12, 4]);
          expect(rays.distancesM[ray]).toBeCloseTo(wantedM, 6);
        }
      }),
    );
  });

  it('go through the middles of the parts of the picture, as the view of the camera has them', () => {
    fc.assert(
      fc.property(scene, fc.boolean(), (lying, upright) => {
        const [columns, rows] = [8, 5];
        const given = { ...lying, frame: { ...lying.frame, upright } };
        const [widthMm, heightMm] = upright ? [24, 36] : [36, 24];
        const rays = raysOf(given, columns, rows);
        const see = createView(given.camera, { spot: given.subject.spot, heightM: given.subject.eyeM });
        for (let ray = 0; ray < rays.count; ray += 1) {
          const { x, y, z } = pointOf(rays, ray);
          const seen = see?.({ spot: { x, y }, heightM: z }) ?? { asideM: 0, upM: 0, deepM: -1 };
          const { focalMm } = given.frame;
          const aside = (seen.asideM / seen.deepM) * (focalMm / widthMm) + 0.5;
          const down = 0.5 - (seen.upM / seen.deepM) * (focalMm / heightMm);
          expect(aside).toBeCloseTo(((ray % columns) + 0.5) / columns, 6);
          expect(down).toBeCloseTo((Math.floor(ray / columns) + 0.5) / rows, 6);
        }
      }),
    );
  });

  it('the middle one meets the subject’s face', () => {
    fc.assert(
      fc.property(scene, (given) => {
        const rays = raysOf(given, 1, 1);
        const { camera, subject } = given;
        const planM = Math.hypot(camera.spot.x - subject.spot.x, camera.spot.y - subject.spot.y);
        fc.pre(planM > 0.5 && Math.abs(camera.heightM - subject.eyeM) < planM / 2);
        expect(rays.kinds[0]).toBe(HIT_KINDS.head);
        expect(rays.distancesM[0]).toBeCloseTo(Math.hypot(planM, camera.heightM - subject.eyeM) - 0.12, 9);
      }),
    );
  });

  it('meet solids on their surface, with nothing before it', () => {
    const thing = fc.record({ at: inHall, turnDeg: within(0, 360), heightM: within(0.3, 3.5) });
    fc.assert(
      fc.property(scene, fc.array(thing, { minLength: 1, maxLength: 4 }), (given, things) => {
        const features = things.map(({ at, turnDeg, heightM }, index) => {
          const corners = box(-0.6, -0.25, 1.2, 0.5).map((corner) => rotate(corner, turnDeg));
          const outline = corners.map(({ x, y }) => ({ x: x + at.x, y: y + at.y }));
          return feature(`thing ${index}`, outline, heightM);
        });
        const full = { ...given, features };
        fc.pre(frameProblem(full) === null);
        expectNothingBefore(full, raysOf(full, 7, 5));
      }),
      { numRuns: 40 },
    );
  });

  function expectNothingBefore({ features, camera }: FrameScene, rays: FrameRays): void {
    const isIn = ({ x, y, z }: { x: number; y: number; z: number }, index: number) => {
      const solid = features[index];
      return solid !== undefined && z > 0 && z < solid.heightM && contains(solid.outline, { x, y });
    };
    for (let ray = 0; ray < rays.count; ray += 1) {
      const end = pointOf(rays, ray);
      const along = (part: number) => ({
        x: camera.spot.x + part * (end.x - camera.spot.x),
        y: camera.spot.y + part * (end.y - camera.spot.y),
        z: camera.heightM + part * (end.z - camera.heightM),
      });
      for (let step = 1; step < 60; step += 1) {
        expect(features.some((_, index) => isIn(along((step / 60) * (1 - 1e-6)), index))).toBe(false);
      }
      if (rays.kinds[ray] !== HIT_KINDS.solid) continue;
      const n = [0, 1, 2].map((axis) => rays.normals[3 * ray + axis] ?? 0);
      const behind = {
        x: end.x - 1e-7 * (n[0] ?? 0),
        y: end.y - 1e-7 * (n[1] ?? 0),
        z: end.z - 1e-7 * (n[2] ?? 0),
      };
      expect(isIn(behind, rays.indices[ray] ?? -1) || nearCorner(behind)).toBe(true);
    }
    function nearCorner({ x, y, z }: { x: number; y: number; z: number }): boolean {
      return features.some(
        ({ outline, heightM }) =>
          Math.abs(z - heightM) < 1e-4 ||
          z < 1e-4 ||
          outline.some((p) => Math.hypot(p.x - x, p.y - y) < 1e-4),
      );
    }
  }

  it.each<Roof>([
    { kind: 'ridge', peakM: 6, ridgeDeg: 20 },
    { kind: 'ridge', peakM: 5, ridgeDeg: 90 },
    { kind: 'pyramid', peakM: 7 },
  ])('meet a roof where it is ($kind)', (roof) => {
    fc.assert(
      fc.property(scene, (given) => {
        const tent = { ...given, room: { ...HALL, ceilingM: 2.6, roof } };
        fc.pre(frameProblem(tent) === null);
        const rays = raysOf({ ...tent, frame: { ...tent.frame, focalMm: 20 } }, 9, 7);
        for (let ray = 0; ray < rays.count; ray += 1) {
          const { x, y, z } = pointOf(rays, ray);
          const overM = roofHeightM(tent.room, { x, y });
          if (rays.kinds[ray] === HIT_KINDS.ceiling) expect(z).toBeCloseTo(overM, 6);
          else expect(z).toBeLessThanOrEqual(overM + 1e-6);
        }
      }),
    );
  });

  it('stay in the room where it has a corner inward', () => {
    const outline = [
      ...box(0, 0, 18, 12).slice(0, 2),
      { x: 18, y: 6 },
      { x: 8, y: 6 },
      { x: 8, y: 12 },
      { x: 0, y: 12 },
    ];
    const bent = { ...SCENE, room: { ...HALL, outline }, camera: { spot: { x: 4, y: 11 }, heightM: 1.6 } };
    const rays = raysOf({ ...bent, subject: { ...SCENE.subject, spot: { x: 6, y: 8 } } }, 24, 16);
    for (let ray = 0; ray < rays.count; ray += 1) {
      const { x, y } = pointOf(rays, ray);
      for (const part of [0.1, 0.5, 0.9, 0.999]) {
        expect(contains(outline, { x: 4 + part * (x - 4), y: 11 + part * (y - 11) })).toBe(true);
      }
    }
    expect(new Set(rays.kinds).has(HIT_KINDS.wall)).toBe(true);
  });

  it('see the tops of tables from above', () => {
    const table = feature('table', box(8, 8.3, 2, 1), 0.75);
    const rays = raysOf({ ...SCENE, features: [table] });
    const tops = Array.from(rays.kinds.keys()).filter(
      (ray) => rays.kinds[ray] === HIT_KINDS.solid && rays.normals[3 * ray + 2] === 1,
    );
    expect(tops.length).toBeGreaterThan(10);
    for (const ray of tops) expect(rays.positions[3 * ray + 2]).toBeCloseTo(0.75, 9);
  });

  it('a shorter lens brings what stands at the edge into the picture', () => {
    // The pillar begins 4 m aside of the axis, 8 m away: 36/2/f is 0.5 at 36 mm.
    const pillar = feature('pillar', box(13, 2.9, 0.2, 0.2), 4);
    const seen = (focalMm: number) => {
      const rays = raysOf({ ...SCENE, features: [pillar], frame: { ...SCENE.frame, focalMm } }, 200, 3);
      return rays.kinds.includes(HIT_KINDS.solid);
    };
    expect([seen(37), seen(34)]).toEqual([false, true]);
  });

  it('a tall thing that is also a blocker of the room is met once', () => {
    const screen = feature('screen', box(8, 3, 2, 0.2), 2);
    const blocker = { id: 'screen', name: 'Screen', outline: screen.outline, heightM: 2, reflectance: 0.4 };
    const other = { ...blocker, id: 'other', name: 'Pillar' };
    const rays = raysOf({ ...SCENE, features: [screen], room: { ...HALL, blockers: [blocker, other] } });
    expect(rays.solids.map(({ name, blocker: number }) => [name, number])).toEqual([
      ['The screen', 0],
      ['Pillar', 1],
    ]);
  });
});

describe('no picture', () => {
  const CROSSING = [...box(0, 0, 18, 12).slice(0, 2), { x: 0, y: 12 }, { x: 20, y: 12 }];
  const reason = (change: Partial<FrameScene>) => frameProblem({ ...SCENE, ...change });
  const camera = (x: number, y: number, heightM = 1.6) => ({ camera: { spot: { x, y }, heightM } });

  it.each([
    ['camera on the subject', camera(9, 7.1), /stands on the subject/],
    ['camera outside', camera(-1, 3), /outside the room/],
    ['camera over the ceiling', camera(9, 11, 4.2), /above the ceiling/],
    ['subject outside', { subject: { ...SCENE.subject, spot: { x: 9, y: -2 } } }, /subject is outside/],
    ['camera in a pillar', { features: [feature('pillar', box(8, 10, 2, 2), 3)] }, /inside The pillar/],
    ['crossing outline', { room: { ...HALL, outline: CROSSING } }, /crosses itself/],
    ['no height', { room: { ...HALL, ceilingM: 0 } }, /walls are 0 m high/],
    [
      'bright walls',
      { room: { ...HALL, finishes: { ...HALL.finishes, walls: 1 } } },
      /reflectance of the walls is 1;/,
    ],
    ['no lens', { frame: { ...SCENE.frame, focalMm: 0 } }, /focal length is 0 mm/],
    ['not a number', camera(Number.NaN, 3), /camera position is not a number/],
  ] as const)('%s has a reason', (_, change, words) => {
    expect(reason(change)).toMatch(words);
    expect(castFrame({ ...SCENE, ...change }, 8, 8)).toMatchObject({
      kind: 'cannot',
      reason: reason(change),
    });
  });

  it('a picture needs whole rows and columns', () => {
    for (const size of [0, 1.5, Number.NaN, 513]) {
      expect(castFrame(SCENE, size, 8)).toMatchObject({ kind: 'cannot' });
      expect(castFrame(SCENE, 8, size)).toMatchObject({ kind: 'cannot' });
    }
    expect(reason({})).toBeNull();
  });

  it('a camera over a low table is not inside it', () => {
    expect(reason({ features: [feature('table', box(8, 10, 2, 2), 0.75)] })).toBeNull();
  });
});
