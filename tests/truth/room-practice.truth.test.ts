import { describe, expect, it } from 'vitest';
import { ambientStops, ev100FromIlluminance } from '../../core/light/exposure.ts';
import { ambientLuxAt } from '../../core/light/lamps/ambient-at.ts';
import { bareLamp } from '../../core/light/lamps/bare-lamp.ts';
import { factorRoomAtOnce } from '../../core/light/room/factor-room.ts';
import { lightRoom } from '../../core/light/room/light-room.ts';
import type { RoomModel } from '../../core/light/room/room-model.ts';
import { createSight } from '../../core/light/room/sight.ts';
import { aimAt } from '../../core/placing/mark.ts';
import { stopsFromRatio } from '../../core/units/stops.ts';
import practice from './fixtures/room-practice.json' with { type: 'json' };

type Hall = (typeof practice)['hall'] | (typeof practice)['tent'];

const EYE_M = 1.6;

/** The room along x: the camera at small x, the back light at large x, the ridge of a tent along x. */
function modelOf({ lengthM, widthM, wallM, peakM, ceiling, walls, floor }: Hall): RoomModel {
  return {
    outline: [
      { x: 0, y: 0 },
      { x: lengthM, y: 0 },
      { x: lengthM, y: widthM },
      { x: 0, y: widthM },
    ],
    ceilingM: wallM,
    roof: peakM === null ? { kind: 'flat' } : { kind: 'ridge', peakM, ridgeDeg: 90 },
    finishes: { ceiling, walls, floor },
    blockers: [],
  };
}

/**
 * Level of the background from the camera's side, one back light at full power: exitance of the far walls and the
 * ceiling behind the subject, the median by area [lm·s/m²].
 */
function backgroundLevel(hall: Hall, behindSubjectM: number): number {
  const room = modelOf(hall);
  const subject = { x: hall.lengthM / 2, y: hall.widthM / 2 };
  const spot = { x: subject.x + behindSubjectM, y: subject.y + 1 };
  const { heightM } = practice.backLight;
  const { facingDeg, tiltDeg } = aimAt(spot, heightM, subject, EYE_M);
  const lamp = bareLamp(practice.head, { ...spot, z: heightM }, facingDeg, tiltDeg);
  const exchange = factorRoomAtOnce(room);
  const { patches } = exchange;
  const { exitance } = lightRoom(exchange, createSight(room), lamp);
  const seen = patches.surfaces
    .map((surface, index) => ({ surface, index, x: patches.centres[3 * index] ?? 0 }))
    .filter(({ surface, x }) => x > subject.x && surface.kind !== 'floor')
    .map(({ index }) => ({ level: exitance[index] ?? 0, area: patches.areas[index] ?? 0 }))
    .sort((a, b) => a.level - b.level);
  let left = seen.reduce((sum, { area }) => sum + area, 0) / 2;
  for (const { level, area } of seen) {
    left -= area;
    if (left <= 0) return level;
  }
  return 0;
}

describe('common practice: what rooms do to the back light', () => {
  it.each(practice.backLight.behindSubjectM)(
    'a tall dark hall takes two stops more than a low white tent, %d m behind the subject',
    (behindSubjectM) => {
      const [hall, tent] = [practice.hall, practice.tent].map((room) =>
        backgroundLevel(room, behindSubjectM),
      );
      expect(hall).toBeGreaterThan(0);
      // Light goes with power: as much as the level lacks, the power must make up.
      const apart = stopsFromRatio((tent ?? 0) / (hall ?? 0));
      expect(apart).toBeGreaterThanOrEqual(practice.leastStopsApart);
    },
  );

  it('and not only because it is dark: with middling finishes it still takes two stops more', () => {
    const middling = { ...practice.hall, ...practice.middlingFinishes };
    const apart = stopsFromRatio(backgroundLevel(practice.tent, 4) / backgroundLevel(middling, 4));
    expect(apart).toBeGreaterThanOrEqual(practice.leastStopsApart);
  });

  it('a hall with a light ceiling and walls takes less than a dark one', () => {
    const light = { ...practice.hall, ceiling: 0.8, walls: 0.5 };
    expect(backgroundLevel(light, 4)).toBeGreaterThan(2 * backgroundLevel(practice.hall, 4));
  });

  it('an EV 4 room sits one to two stops under at 1/160 s, ISO 1600, f/2, wherever it was measured', () => {
    const { ev100, underLeast, underMost, ...settings } = practice.reception;
    const readings = [
      { spot: { x: 2, y: 3 }, ev100 },
      { spot: { x: 9, y: 7 }, ev100 },
    ];
    for (const lux of [
      ambientLuxAt(readings, { x: 5, y: 5 }, null),
      ambientLuxAt([], { x: 5, y: 5 }, ev100),
    ]) {
      const under = -(ambientStops(ev100FromIlluminance(lux ?? 0) ?? Number.NaN, settings) ?? Number.NaN);
      expect(under).toBeGreaterThanOrEqual(underLeast);
      expect(under).toBeLessThanOrEqual(underMost);
    }
  });
});
