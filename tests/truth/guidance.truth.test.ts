import { describe, expect, it } from 'vitest';
import { circularMeanDeg } from '../../core/geometry/angle.ts';
import { cameraFrame } from '../../core/geometry/camera-frame.ts';
import { outlineOf } from '../../core/geometry/shape.ts';
import { add, distance, rotate, type Spot, scale, subtract } from '../../core/geometry/spot.ts';
import { bearingDeg, clockHour, turnDeg, turnWords } from '../../core/guidance/bearing.ts';
import { nudgeSpot } from '../../core/guidance/camera-sense.ts';
import { followDirection } from '../../core/guidance/direction.ts';
import { stepFromHeight, stepsFor } from '../../core/guidance/steps.ts';
import { expectClose } from './expect-close.ts';
import truth from './fixtures/guidance.json' with { type: 'json' };

function spotOf(pair: readonly number[]): Spot {
  const [x, y] = pair;
  if (x === undefined || y === undefined) throw new Error(`not a pair: ${pair}`);
  return { x, y };
}

function expectSpot(actual: Spot | null, pair: readonly number[]): void {
  expect(actual).not.toBeNull();
  if (actual) expect(distance(actual, spotOf(pair))).toBeLessThan(1e-6);
}

describe('guidance against worked values', () => {
  it.each(truth.turns)('from %i° to %i° is a turn of %i°', (heading, bearing, turn) => {
    expect(turnDeg(heading ?? 0, bearing ?? 0)).toBe(turn);
  });

  it.each(truth.means)('mean of $listDeg is $meanDeg°', ({ listDeg, meanDeg, tolerance }) => {
    const mean = circularMeanDeg(listDeg) ?? Number.NaN;
    expectClose(turnDeg(meanDeg, mean), 0, tolerance, 'mean');
  });

  it.each(truth.bearings)('$from to $to facing $headingDeg°', (row) => {
    const [from, to] = [spotOf(row.from), spotOf(row.to)];
    expectClose(distance(from, to), row.distanceM, 'four-digits', 'distance');
    const bearing = bearingDeg(from, to);
    expectClose(bearing, row.bearingDeg, 'two-digits', 'bearing');
    const turn = turnDeg(row.headingDeg, bearing ?? Number.NaN);
    expectClose(turn, row.turnDeg, 'two-digits', 'turn');
    expect(clockHour(turn)).toBe(row.hour);
    expect(turnWords(turn)).toBe(row.words);
  });

  it.each(truth.halfWay)('a turn of %i° is %i o’clock: half-way goes clockwise', (turn, hour) => {
    expect(clockHour(turn ?? 0)).toBe(hour);
  });

  it.each(truth.headingUp)('heading up: facing $headingDeg°', (row) => {
    const turned = rotate(spotOf(row.target), -row.headingDeg);
    expectSpot(add(spotOf(row.centre), scale(turned, row.scale)), row.screen);
  });

  it.each(truth.steps)('$heightM m tall', ({ heightM, ratio, stepM, stepsFor10M }) => {
    const step = stepFromHeight(heightM, ratio);
    expectClose(step, stepM, 'four-digits', 'step');
    expect(stepsFor(10, step)).toBe(stepsFor10M);
  });

  it.each(truth.stepCounts)('%d m in steps of %d m: %i', (distanceM, stepM, steps) => {
    expect(stepsFor(distanceM ?? 0, stepM ?? 0)).toBe(steps);
  });

  it.each(truth.cameraLeft)('camera at $camera, subject at $subject', (row) => {
    const [camera, subject] = [spotOf(row.camera), spotOf(row.subject)];
    const nudged = (way: 'camera-left' | 'camera-right' | 'farther', byM: number) =>
      nudgeSpot({ spot: subject, camera, subject, way, byM });
    expectSpot(nudged('camera-left', 2), row.left2);
    expectSpot(nudged('camera-right', 2), row.right2);
    if (row.farther1_5) expectSpot(nudged('farther', 1.5), row.farther1_5);
    if (row.headingDeg !== undefined) {
      expectClose(bearingDeg(camera, subject), row.headingDeg, 'two-digits', 'heading');
    }
    const frame = cameraFrame(camera, subject);
    expectSpot(frame && subtract(frame.nearer, scale(frame.farther, -1)), [0, 0]);
  });

  it('stops 1 m short of a round table', () => {
    const { from, centre, radiusM, shortM, stop, tolerance } = truth.stopShort;
    const outline = outlineOf({ at: spotOf(centre), turnDeg: 0, shape: { kind: 'round', radiusM } });
    const table = { id: 't4', name: 'Table 4', outline, heightM: 0.75, tall: false };
    const direction = { form: 'toward-stop-short', toward: table, stopAt: table, shortM } as const;
    const end = followDirection(direction, spotOf(from), [table], null);
    expectClose(end && distance(end, spotOf(stop)), 0, tolerance, 'stop');
  });
});
