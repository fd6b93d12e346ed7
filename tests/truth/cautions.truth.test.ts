import { describe, expect, it } from 'vitest';
import { HEADROOM_M, rimLow } from '../../core/cautions/rim-height.ts';
import {
  ballastForPushKg,
  criticalWind,
  edgeDistance,
  restoringMoments,
  type StandBuild,
  tipForce,
  tipForceToward,
  tipTiltDeg,
  weightN,
} from '../../core/cautions/tipping.ts';
import { type Obstacle, widthLeft } from '../../core/cautions/walkway.ts';
import { CLEAR_WIDTH_M, PINCH_WIDTH_M, walkwayCaution } from '../../core/cautions/walkway-caution.ts';
import { beaufortOf, windForceN } from '../../core/cautions/wind.ts';
import { rotate, type Spot } from '../../core/geometry/spot.ts';
import { expectClose } from './expect-close.ts';
import beaufort from './fixtures/beaufort.json' with { type: 'json' };
import widths from './fixtures/clear-widths.json' with { type: 'json' };
import tipping from './fixtures/tipping.json' with { type: 'json' };

const HEAD_HEIGHT_M = 2.2;
const UMBRELLA = { diameterM: 1 };
const SHEET = 'safety-sheet';

function build(bagKg: number, bagAt: Spot = { x: 0, y: 0 }): StandBuild {
  return {
    legs: 3,
    legRadiusM: 0.5,
    standKg: 1.5,
    standCgM: 0.7,
    headKg: 1,
    ballastKg: bagKg,
    ballastAt: bagAt,
    ballastCgM: 0.15,
  };
}

function box(x0: number, y0: number, x1: number, y1: number): Spot[] {
  return [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
}

describe('tipping against worked values', () => {
  it.each(tipping.tip)('bag of $bagKg kg', (row) => {
    const stand = build(row.bagKg);
    for (const moment of restoringMoments(stand)) expectClose(moment, row.R, SHEET, 'moment');
    expectClose(tipForce(stand, HEAD_HEIGHT_M), row.F_worst_N, SHEET, 'worst push');
    expectClose(tipForceToward(stand, HEAD_HEIGHT_M, 0), row.F_alongLeg_N, SHEET, 'push along a leg');
    const wind = criticalWind(stand, HEAD_HEIGHT_M, UMBRELLA);
    expectClose(wind, row.V_Cd142, SHEET, 'wind');
    expectClose(
      criticalWind(stand, HEAD_HEIGHT_M, { ...UMBRELLA, drag: 1.1 }),
      row.V_Cd110,
      SHEET,
      'wind, disc',
    );
    expectClose(criticalWind(stand, HEAD_HEIGHT_M, UMBRELLA, 1.5), row.V_Cd142_FS15, SHEET, 'wind, margin');
    expectClose(tipTiltDeg(stand, HEAD_HEIGHT_M), row.tiltDeg, SHEET, 'tilt');
    expect(beaufortOf(wind ?? 0)).toBe(row.beaufort);
  });

  it.each(tipping.bagOnLeg)('bag of $bagKg kg on a leg, $x m out', (row) => {
    const stand = build(row.bagKg, { x: row.x, y: 0 });
    expectClose(tipForce(stand, HEAD_HEIGHT_M), row.F_worst_N, SHEET, 'worst push');
    expectClose(tipForceToward(stand, HEAD_HEIGHT_M, 180), row.F_away_N, SHEET, 'push away');
  });

  it.each(tipping.headOffset)('head $e m out over a $over', (row) => {
    const overDeg = row.over === 'leg' ? 0 : 60;
    const stand = { ...build(0), headAt: rotate({ x: row.e, y: 0 }, overDeg) };
    expectClose(tipForce(stand, HEAD_HEIGHT_M), row.F_worst_N, SHEET, 'worst push');
    expectClose(tipForceToward(stand, HEAD_HEIGHT_M, overDeg), row.F_alongOverhang_N, SHEET, 'push');
  });

  it.each(tipping.edgeDistanceOverR)('%i legs: edge at %d of the leg radius', (legs, share) => {
    expectClose(edgeDistance(legs ?? 0, 1), share ?? 0, 'four-digits', 'edge');
  });

  it.each(tipping.pushBallast)('ballast against $F N at $h m', ({ F, h, m }) => {
    expectClose(ballastForPushKg(build(0), F, h), m, SHEET, 'ballast');
  });

  it.each(tipping.windBallast)('ballast against $V m/s with margin $FS', ({ V, FS, m }) => {
    const push = FS * windForceN(V, 1);
    expectClose(ballastForPushKg(build(0), push, HEAD_HEIGHT_M), m, 'ballast-tenths', 'ballast');
  });

  it.each(tipping.drag)('wind of $V m/s, Cd $Cd', ({ V, D, Cd, F }) => {
    expectClose(windForceN(V, D, Cd), F, SHEET, 'force');
  });

  it('13 % of the weight at 1.5 m needs legs of 0.39 m, whatever the mass', () => {
    const legRadiusM = tipping.yardstickLegRadius.at13Percent;
    for (const bagKg of [0, 5, 20]) {
      const stand = { ...build(bagKg), legRadiusM };
      expectClose((tipForce(stand, 1.5) ?? 0) / weightN(stand), 0.13, 'three-digits', 'share');
    }
  });

  it.each(beaufort.lowerMs.map((fromMs, force) => ({ fromMs, force })))(
    'force $force from $fromMs m/s',
    ({ fromMs, force }) => {
      expect(beaufortOf(fromMs)).toBe(force);
      expect(beaufortOf(fromMs - 0.01)).toBe(Math.max(0, force - 1));
    },
  );
});

describe('widths and heights against published limits', () => {
  const levelOf = (left: ReturnType<typeof widthLeft>, stand: Spot, room: Spot[]) =>
    walkwayCaution({ stand, room, width: left })?.level ?? 'none';

  it.each(widths.width)('a way of $gap m with $intrusion m taken', (row) => {
    const room = box(0, 0, row.gap, 20);
    const stand = { x: row.intrusion / 2, y: 10 };
    const width = widthLeft({ stand, footprintRadiusM: row.intrusion / 2, obstacles: [], room });
    expectClose(width?.leftM ?? null, row.left, SHEET, 'left');
    expectClose(width?.gapM ?? null, row.gap, SHEET, 'gap');
    expect(levelOf(width, stand, room)).toBe(row.level);
  });

  it('two tables with chairs: 19 in of chair on either side', () => {
    const zone = widths.tablesChairZone;
    const room = box(-10, -10, 10 + zone.tableToTable, 10);
    const tables: Obstacle[] = [
      { id: 'a', name: 'Table 1', outline: box(-5, -5, 0, 5), chairs: true },
      {
        id: 'b',
        name: 'Table 2',
        outline: box(zone.tableToTable, -5, zone.tableToTable + 5, 5),
        chairs: true,
      },
    ];
    const footprintRadiusM = zone.footprint / 2;
    const stand = { x: 0.483 + footprintRadiusM, y: 0 };
    const width = widthLeft({ stand, footprintRadiusM, obstacles: tables, room });
    expectClose(width?.gapM ?? null, zone.aisle, SHEET, 'aisle');
    expectClose(width?.leftM ?? null, zone.left, SHEET, 'left');
    expect(levelOf(width, stand, room)).toBe(zone.level);
    expect([...(width?.between ?? [])].sort()).toEqual(['Table 1', 'Table 2']);
  });

  it.each(widths.rimLow)('rim at $H m, tilted $tau°', ({ H, D, tau, z, under }) => {
    expectClose(rimLow(H, D, tau), z, SHEET, 'rim');
    expect(rimLow(H, D, tau) < HEADROOM_M).toBe(under);
  });

  it('the limits are the published ones', () => {
    expect([CLEAR_WIDTH_M, PINCH_WIDTH_M, HEADROOM_M]).toEqual([
      widths.limits.clearM,
      widths.limits.pinchM,
      widths.limits.headroomM,
    ]);
  });
});
