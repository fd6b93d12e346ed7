import { describe, expect, it } from 'vitest';
import { openGuideNumberM } from '../../core/light/lamps/guide-number-meaning.ts';
import type { LightInput, LightUnit } from '../../core/light/report/light-input.ts';
import type { RoomModel } from '../../core/light/room/room-model.ts';
import { BARE, deskFor, INPUT, ROOM, reportOf, SUBJECT, unit } from '../core/report/report-scene.ts';
import { toleranceOf } from './tolerances.ts';

/**
 * What photographers find by itself in a whole room, with everything counted: *common practice*, no source. The
 * numbers P2, P6, P10 and P12 are those of the list that this project was given; none of them is built in.
 */
const DARK: RoomModel = { ...ROOM, ceilingM: 7, finishes: { ceiling: 0.2, walls: 0.2, floor: 0.1 } };
const desks = { 'a middling room': deskFor(ROOM, 400), 'a tall dark hall': deskFor(DARK, 400) };

/** A typical small head: GN 36 m at 35 mm as its leaflet says, in a white umbrella of 1 m. */
const HEAD = { guideNumberM: openGuideNumberM(36, 'printed'), zoomMm: 35, leastPowerStops: -7 };

/** A key 45° to the side of the camera axis, its head at 2.2 m, so far from the eyes in space. */
function keyAt(distanceM: number): LightUnit {
  const planM = Math.sqrt(distanceM ** 2 - (2.2 - SUBJECT.eyeM) ** 2);
  const at = { x: SUBJECT.spot.x + planM * Math.SQRT1_2, y: SUBJECT.spot.y + planM * Math.SQRT1_2 };
  return unit('key', at, {
    recipe: { kind: 'umbrella', head: HEAD, umbrella: { diameterM: 1, forwardFraction: 0.5 } },
  });
}

const alone = (one: LightUnit): LightInput => ({ ...INPUT, ambientEv100: null, units: [one] });

describe('common practice in whole rooms', () => {
  it.each(
    Object.entries(desks).flatMap(([name, desk]) =>
      [2, 2.5, 3].map((distanceM) => ({ name, desk, distanceM })),
    ),
  )('P2: an umbrella key alone at $distanceM m in $name is solved to about 1/64', ({ desk, distanceM }) => {
    const solved = reportOf(desk, alone(keyAt(distanceM))).powers.lights[0]?.powerStops;
    expect(Math.abs((solved ?? 0) + 6)).toBeLessThanOrEqual(toleranceOf('two-thirds-stop'));
  });

  it('P6: the same hall needs other powers when the dance floor is moved', () => {
    const desk = desks['a middling room'];
    const lights = [keyAt(2.5), unit('back', { x: 3, y: 0.8 }, { recipe: BARE })];
    const here = reportOf(desk, { ...INPUT, units: lights });
    const there = reportOf(desk, { ...INPUT, units: lights, subject: { ...SUBJECT, spot: { x: 9, y: 3 } } });
    const powers = (report: typeof here) => report.powers.lights.map(({ powerStops }) => powerStops);
    expect(powers(there)).not.toEqual(powers(here));
  });

  it.each(Object.entries(desks))(
    'P10: at the solved powers the rim shows, and not too much: %s',
    (_name, desk) => {
      const lights = [keyAt(2.5), unit('back', { x: 4.2, y: 0.6 }, { recipe: BARE })];
      const { powers } = reportOf(desk, { ...INPUT, ambientEv100: 1, units: lights });
      const level = (name: string) =>
        powers.targets.find((target) => target.name === name)?.levelStops ?? Number.NaN;
      expect(level('rim')).toBeGreaterThan(0);
      expect(level('rim') - level('subject')).toBeLessThanOrEqual(1.5);
    },
  );

  it('P12: the lead may walk; a stand’s exposure stays, that of the flash on the camera does not', () => {
    const desk = desks['a tall dark hall'];
    const from = (y: number) => ({ spot: { x: 6, y }, heightM: SUBJECT.eyeM });
    const stops = (camera: LightInput['camera']) => {
      const flash = unit('camera', camera.spot, { recipe: BARE });
      const level = { ...flash, mark: { ...flash.mark, heightM: SUBJECT.eyeM, tiltDeg: 0 } };
      const report = reportOf(desk, { ...INPUT, ambientEv100: null, camera, units: [keyAt(2.5), level] });
      return report.units.map(({ facingStops }) => facingStops ?? Number.NaN);
    };
    const [far, near] = [stops(from(8)), stops(from(6))];
    expect((near[0] ?? 0) - (far[0] ?? 1)).toBeCloseTo(0, 9);
    expect((near[1] ?? 0) - (far[1] ?? 1)).toBeCloseTo(2, 9);
  });
});
