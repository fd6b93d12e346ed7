import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linkFrame } from '../../../core/light/frame/link-frame.ts';
import type { FrameScene } from '../../../core/light/frame/scene.ts';
import { combineShades, shadeAmbient, shadeFrame } from '../../../core/light/frame/shade-frame.ts';
import {
  MID_REFLECTANCE,
  shadeLamp,
  shadeReturned,
  shadeStraight,
} from '../../../core/light/frame/shade-lamp.ts';
import { HIT_KINDS } from '../../../core/light/frame/shell.ts';
import { bareLamp } from '../../../core/light/lamps/bare-lamp.ts';
import { factorRoomAtOnce } from '../../../core/light/room/factor-room.ts';
import { lightRoom } from '../../../core/light/room/light-room.ts';
import { cutIntoPatches } from '../../../core/light/room/patches.ts';
import { createSight } from '../../../core/light/room/sight.ts';
import { box, evenLamp, feature, HALL, rayAt, raysOf, SCENE } from './frame-scenes.ts';

const HEAD = { guideNumberM: 36, zoomMm: 35, leastPowerStops: -7 };
const EXPOSURE = { iso: 1600, fNumber: 2, shutterS: 1 / 160 };
/** Light that the incident meter calls correct at these settings: C·N²/S [lx·s]. */
const CORRECT = (250 * 4) / 1600;

const SIGHT = createSight(HALL);
const PATCHES = cutIntoPatches(HALL, 2);

function linksOf(scene: FrameScene, columns = 48, rows = 32) {
  return linkFrame(raysOf(scene, columns, rows), PATCHES, SIGHT);
}

/** A low, small subject out of the way: what counts is the room. */
const EMPTY: FrameScene = {
  ...SCENE,
  subject: { ...SCENE.subject, eyeM: 0.1 },
  camera: { spot: { x: 9, y: 11 }, heightM: 0.1 },
};

describe('shade', () => {
  it('a room without light is black', () => {
    const levels = shadeFrame(linksOf(SCENE), SIGHT, [], 0, EXPOSURE);
    expect(new Set(levels)).toEqual(new Set([-20]));
  });

  it('without a shutter, a speed or an aperture there is no level', () => {
    const links = linksOf(SCENE, 4, 4);
    for (const field of ['iso', 'fNumber', 'shutterS'] as const) {
      expect(shadeFrame(links, SIGHT, [], 10, { ...EXPOSURE, [field]: 0 })).toBeNull();
    }
  });

  it('a lamp lights the wall that it faces, and not the one behind it', () => {
    const links = linksOf(EMPTY);
    const facing = shadeStraight(links, SIGHT, bareLamp(HEAD, { x: 9, y: 4, z: 2 }, 0, 0));
    const turned = shadeStraight(links, SIGHT, bareLamp(HEAD, { x: 9, y: 4, z: 2 }, 180, 0));
    const ray = rayAt(links.rays, 0.5, 0.3);
    expect(links.rays.kinds[ray]).toBe(HIT_KINDS.wall);
    expect(facing[ray]).toBeGreaterThan(1);
    expect(turned[ray]).toBe(0);
  });

  it('a far wall lit bare falls two stops per doubled distance', () => {
    const links = linksOf(EMPTY);
    const ray = rayAt(links.rays, 0.6, 0.4);
    const levelAt = (awayM: number) => {
      const at = {
        x: links.rays.positions[3 * ray] ?? 0,
        y: awayM,
        z: links.rays.positions[3 * ray + 2] ?? 0,
      };
      const shade = shadeStraight(links, SIGHT, bareLamp(HEAD, at, 0, 0));
      return (
        combineShades([{ shade, powerStops: -3 }], null, EXPOSURE, links.rays.count)?.[ray] ?? Number.NaN
      );
    };
    expect(levelAt(2) - levelAt(4)).toBeCloseTo(2, 9);
    expect(levelAt(4) - levelAt(8)).toBeCloseTo(2, 9);
  });

  it('a surface lit as the incident meter asks reads log2(ρ/0.157), by flash and by ambient', () => {
    const room = { ...HALL, finishes: { ceiling: 0.7, walls: 0.18, floor: MID_REFLECTANCE } };
    const links = linksOf({ ...EMPTY, room, camera: { spot: { x: 9, y: 11 }, heightM: 0.6 } });
    const flash = shadeLamp(links, SIGHT, evenLamp(CORRECT), null);
    const flashed = combineShades([{ shade: flash, powerStops: 0 }], null, EXPOSURE, links.rays.count);
    const ambient = shadeAmbient(links.rays, () => CORRECT / EXPOSURE.shutterS);
    const still = combineShades([], ambient, EXPOSURE, links.rays.count);
    for (const levels of [flashed, still]) {
      expect(levels?.[rayAt(links.rays, 0.5, 0.4)]).toBeCloseTo(Math.log2(0.18 / MID_REFLECTANCE), 9);
      expect(levels?.[rayAt(links.rays, 0.1, 0.99)]).toBeCloseTo(0, 9);
    }
  });

  it('lights add as light, and power is a factor', () => {
    const links = linksOf(SCENE, 12, 8);
    const power = fc.double({ min: -8, max: 0, noNaN: true });
    const one = shadeLamp(links, SIGHT, bareLamp(HEAD, { x: 3, y: 3, z: 2.4 }, 120, 10), null);
    const other = shadeLamp(links, SIGHT, evenLamp(0.2), null);
    fc.assert(
      fc.property(power, power, (a, b) => {
        const shades = [
          { shade: one, powerStops: a },
          { shade: other, powerStops: b },
        ];
        const both = combineShades(shades, null, EXPOSURE, links.rays.count) ?? [];
        const alone = shades.map((shade) => combineShades([shade], null, EXPOSURE, links.rays.count) ?? []);
        for (const [ray, level] of both.entries()) {
          // −20 stops stands for none: less than a thousandth of what the even lamp gives.
          const sum = alone.reduce((light, levels) => light + 2 ** (levels[ray] ?? 0), 0);
          expect(level).toBeCloseTo(Math.log2(sum), 2);
        }
      }),
    );
  });

  it('the subject throws its shadow on what is behind it, and on nothing else', () => {
    const wall = linksOf(SCENE, 200, 3);
    const lamp = evenLamp(1, 9, 10.99, 1.6);
    const shade = shadeStraight(wall, SIGHT, lamp);
    const middle = Array.from({ length: 200 }, (_, column) => 200 + column);
    const onWall = middle.filter((ray) => wall.rays.kinds[ray] === HIT_KINDS.wall);
    // From the lens's own place the shadow hides behind the subject: a lamp aside shows it.
    expect(onWall.filter((ray) => shade[ray] === 0)).toEqual([]);
    const aside = shadeStraight(wall, SIGHT, evenLamp(1, 7, 11, 1.6));
    const dark = onWall.filter((ray) => aside[ray] === 0);
    // The shadow's axis: from (7, 11) over (9, 7) to the far wall, at x = 12.5.
    for (const ray of dark) expect(wall.rays.positions[3 * ray]).toBeCloseTo(12.5, 0);
    // 0.24 m at 4.5 m make 0.69 m along the wall at 12.3 m, where rays lie 0.057 m apart.
    expect(dark.length).toBeGreaterThan(10);
    expect(dark.length).toBeLessThan(15);
  });

  it('a pillar throws a shadow', () => {
    const blockers = [
      { id: 'p', name: 'Pillar', outline: box(10, 4, 0.4, 0.4), heightM: 4, reflectance: 0.5 },
    ];
    const room = { ...HALL, blockers };
    const sight = createSight(room);
    const links = linkFrame(raysOf({ ...EMPTY, room }, 200, 5), cutIntoPatches(room, 2), sight);
    const shade = shadeStraight(links, sight, evenLamp(1, 6, 8, 1));
    const onWall = Array.from(shade.keys()).filter(
      (ray) => links.rays.kinds[ray] === HIT_KINDS.wall && links.rays.indices[ray] === 0,
    );
    const dark = onWall.filter((ray) => shade[ray] === 0).map((ray) => links.rays.positions[3 * ray] ?? 0);
    // Through the pillar's corners (10, 4) and (10.4, 4.4) … the far wall is met between 14 and 15.8.
    expect(Math.min(...dark)).toBeGreaterThan(13.7);
    expect(Math.max(...dark)).toBeLessThan(16);
    expect(dark.length).toBeGreaterThan(5);
  });
});

describe('light that the room returns', () => {
  it('is even where all patches send out the same: on walls, tables and the subject', () => {
    const scene = { ...SCENE, features: [feature('table', box(6, 6, 2, 1), 0.75)] };
    const links = linksOf(scene);
    const even = new Float64Array(PATCHES.count).fill(0.5);
    const shade = shadeReturned(links, { direct: even, exitance: even, returned: even });
    expect(new Set(links.rays.kinds).size).toBe(6);
    for (let ray = 0; ray < links.rays.count; ray += 1) {
      const reflectance = links.rays.reflectances[ray] ?? 0;
      expect(shade[ray]).toBeCloseTo((0.5 * reflectance) / MID_REFLECTANCE, 9);
    }
  });

  it('on the room’s surfaces is that of the patches there, and never outside their range', () => {
    const returned = Float64Array.from(
      { length: PATCHES.count },
      (_, patch) => PATCHES.centres[3 * patch] ?? 0,
    );
    const zero = new Float64Array(PATCHES.count);
    const links = linksOf(EMPTY);
    const shade = shadeReturned(links, { direct: zero, exitance: zero, returned });
    for (let ray = 0; ray < links.rays.count; ray += 1) {
      if (links.cubes[ray] !== -1) continue;
      const x = ((shade[ray] ?? 0) * MID_REFLECTANCE) / (links.rays.reflectances[ray] ?? 1);
      // The value is the patch's own x: patches are 2 m wide.
      expect(Math.abs(x - (links.rays.positions[3 * ray] ?? 0))).toBeLessThan(1.6);
    }
  });

  it('is brighter on the side of a table that looks to the bright wall', () => {
    const exitance = Float64Array.from(PATCHES.surfaces, (surface) =>
      surface.kind === 'wall' && surface.wall === 3 ? 1 : 0,
    );
    const zero = new Float64Array(PATCHES.count);
    const cube = feature('box', box(8, 8, 2, 1), 1.2);
    const links = linksOf({ ...SCENE, features: [cube], camera: { spot: { x: 12, y: 11.5 }, heightM: 1.7 } });
    const shade = shadeReturned(links, { direct: zero, exitance, returned: zero });
    const sideMean = (axis: number, sign: number) => {
      const rays = Array.from(shade.keys()).filter(
        (ray) => links.rays.kinds[ray] === HIT_KINDS.solid && links.rays.normals[3 * ray + axis] === sign,
      );
      expect(rays.length).toBeGreaterThan(3);
      return rays.reduce((sum, ray) => sum + (shade[ray] ?? 0) / rays.length, 0);
    };
    // Wall 3 is at x = 0: the side that looks to +x sees nothing of it, the one to +y a little.
    expect(sideMean(0, 1)).toBe(0);
    expect(sideMean(1, 1)).toBeGreaterThan(0.01);
  });

  it('goes on where the direct light ends: a factored room lights what the lamp does not see', () => {
    const exchange = factorRoomAtOnce(HALL, { patchM: 2 });
    const lamp = bareLamp(HEAD, { x: 9, y: 4, z: 2 }, 180, 0);
    const links = linkFrame(raysOf(EMPTY), exchange.patches, SIGHT);
    const light = lightRoom(exchange, SIGHT, lamp);
    const whole = shadeLamp(links, SIGHT, lamp, light);
    const straight = shadeStraight(links, SIGHT, lamp);
    const returned = shadeReturned(links, light);
    const ray = rayAt(links.rays, 0.5, 0.3);
    expect(straight[ray]).toBe(0);
    expect(whole[ray]).toBeGreaterThan(0.001);
    for (const [index, value] of whole.entries()) {
      expect(value).toBeCloseTo((straight[index] ?? 0) + (returned[index] ?? 0), 12);
    }
  });
});
