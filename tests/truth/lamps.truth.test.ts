import { describe, expect, it } from 'vitest';
import { flashStops } from '../../core/light/exposure.ts';
import type { FlashHead } from '../../core/light/flash-head.ts';
import { bareLamp } from '../../core/light/lamps/bare-lamp.ts';
import { AVERAGE_ROOM_STOPS } from '../../core/light/lamps/guide-number-meaning.ts';
import { umbrellaLamp } from '../../core/light/lamps/umbrella-lamp.ts';
import { factorRoomAtOnce } from '../../core/light/room/factor-room.ts';
import { returnedAt } from '../../core/light/room/gather.ts';
import { lightRoom } from '../../core/light/room/light-room.ts';
import { createSight } from '../../core/light/room/sight.ts';
import { forwardFlux } from '../../core/light/umbrella.ts';
import { stopsFromRatio } from '../../core/units/stops.ts';
import { expectClose } from './expect-close.ts';
import adding from './fixtures/adding-light.json' with { type: 'json' };
import candelas from './fixtures/candela-seconds.json' with { type: 'json' };
import disc from './fixtures/disc.json' with { type: 'json' };
import examples from './fixtures/guide-number-examples.json' with { type: 'json' };
import lamps from './fixtures/lamps.json' with { type: 'json' };
import { toleranceOf } from './tolerances.ts';

const HEAD: FlashHead = { guideNumberM: 36, zoomMm: 35, leastPowerStops: -7 };
const AT = { x: 0, y: 0, z: 0 };

describe('a bare lamp against published values', () => {
  it.each(examples.fNumbers)('$what', ({ guideNumber, distance, iso, expected }) => {
    const lamp = bareLamp({ ...HEAD, guideNumberM: guideNumber }, AT, 90, 0);
    const stops = flashStops(lamp.toward(distance, 0, 0), { iso, fNumber: expected, shutterS: 1 });
    expect(Math.abs(stops ?? Number.NaN)).toBeLessThan(0.001);
  });

  it.each(candelas.rows)('GN $guideNumberM m gives $candelaSeconds lx·s at 1 m', (row) => {
    const lamp = bareLamp({ ...HEAD, guideNumberM: row.guideNumberM }, AT, 0, 0);
    expectClose(lamp.on(0, -1, 0, 0, 1, 0), row.candelaSeconds, row.tolerance, 'lx·s');
  });

  it.each(adding.falloff)('$nearM m to $farM m: $stops stops', ({ nearM, farM, stops, tolerance }) => {
    const lamp = bareLamp(HEAD, AT, 180, 0);
    const ratio = lamp.toward(0, nearM, 0) / lamp.toward(0, farM, 0);
    expectClose(stopsFromRatio(ratio), stops, tolerance, 'falloff');
  });
});

describe('an umbrella lamp against published values', () => {
  it.each(disc.factors)('disc of $radiusM m, element $offsetM m aside and $heightM m off', (row) => {
    const umbrella = { diameterM: 2 * row.radiusM, forwardFraction: 0.5 };
    const lamp = umbrellaLamp(HEAD, umbrella, AT, 180, 0);
    const exitance = forwardFlux({ head: HEAD, umbrella }) / (Math.PI * row.radiusM ** 2);
    const level = lamp.on(row.offsetM, row.heightM, 0, 0, -1, 0);
    expectClose(level / exitance, row.factor, row.tolerance, 'factor');
  });

  it.each(disc.onAxis)('on its axis at $diameters diameters', (row) => {
    const lamp = umbrellaLamp(HEAD, { diameterM: 1, forwardFraction: 0.5 }, AT, 180, 0);
    const point = lamp.toward(0, 1e4, 0) * 1e8;
    const ratio = (lamp.toward(0, row.diameters, 0) * row.diameters ** 2) / point;
    expectClose(ratio, row.ratio, row.tolerance, 'ratio');
  });

  const loss = lamps.umbrellaLoss;
  it.each(loss.zoomsMm)('loses about what the field guide says, head zoomed to %d mm', (zoomMm) => {
    const head = { ...HEAD, zoomMm };
    const cloth = umbrellaLamp(head, { diameterM: 1, forwardFraction: 0.5 }, AT, 0, 0);
    const ratio = bareLamp(head, AT, 0, 0).toward(0, -100, 0) / cloth.toward(0, -100, 0);
    const lossStops = stopsFromRatio(ratio) ?? Number.NaN;
    expect(lossStops).toBeGreaterThan(loss.leastStops - toleranceOf(loss.tolerance));
    expect(lossStops).toBeLessThan(loss.mostStops + toleranceOf(loss.tolerance));
  });
});

describe('the room in a printed guide number (common practice)', () => {
  const { widthM, depthM, heightM, finishes, distanceM, eyeM, zoomsMm, stops, tolerance } = lamps.averageRoom;
  const outline = [
    { x: 0, y: 0 },
    { x: widthM, y: 0 },
    { x: widthM, y: depthM },
    { x: 0, y: depthM },
  ];
  const room = { outline, ceilingM: heightM, roof: { kind: 'flat' as const }, finishes, blockers: [] };
  const exchange = factorRoomAtOnce(room);
  const sight = createSight(room);

  /** What the room adds at a subject in the middle line [stops]: to a flat receptor, and to a dome. */
  function roomStops(zoomMm: number) {
    const away = (widthM - distanceM) / 2;
    const lamp = bareLamp({ ...HEAD, zoomMm }, { x: away, y: depthM / 2, z: eyeM }, 90, 0);
    const { exitance } = lightRoom(exchange, sight, lamp);
    const at = { x: away + distanceM, y: depthM / 2, z: eyeM };
    const on = (x: number | null) =>
      returnedAt(exchange, sight, exitance, at, x === null ? null : { x, y: 0, z: 0 });
    const direct = lamp.toward(at.x, at.y, at.z);
    // A dome weights light from θ off its axis with (1 + cos θ)/2: half of all round, half of front less back.
    const dome = (4 * on(null) + on(-1) - on(1)) / 2;
    return { flat: Math.log2(1 + on(-1) / direct), dome: Math.log2(1 + dome / direct) };
  }

  it.each(zoomsMm)(
    'a dome in an average room finds what the room is said to be worth, at %d mm',
    (zoomMm) => {
      expectClose(roomStops(zoomMm).dome, stops, tolerance, 'stops');
      expectClose(AVERAGE_ROOM_STOPS, stops, 'exact', 'stops');
    },
  );

  it.each(zoomsMm)(
    'a flat receptor turned to the flash finds less: it is turned away from the far wall, at %d mm',
    (zoomMm) => {
      const { flat, dome } = roomStops(zoomMm);
      expect(flat).toBeGreaterThan(0);
      expect(flat).toBeLessThan(dome / 2);
    },
  );
});
