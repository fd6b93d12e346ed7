import { describe, expect, it } from 'vitest';
import { areaOf } from '../../core/geometry/polygon.ts';
import { distance, type Spot } from '../../core/geometry/spot.ts';
import { createHomography } from '../../core/plan/homography.ts';
import { lengthFromSteps, stepFromKnownLength } from '../../core/plan/pacing.ts';
import { type CutCorner, lOutline, rectangleOutline } from '../../core/plan/room-shapes.ts';
import { createTrace } from '../../core/plan/traced.ts';
import { expectClose } from './expect-close.ts';
import truth from './fixtures/plan.json' with { type: 'json' };

function spotOf(pair: readonly number[]): Spot {
  const [x, y] = pair;
  if (x === undefined || y === undefined) throw new Error(`not a pair: ${pair}`);
  return { x, y };
}

function given<T extends object>(outcome: T | { readonly reason: string }): T {
  if ('reason' in outcome) throw new Error(outcome.reason);
  return outcome;
}

describe('plan geometry against worked values', () => {
  it('a picture with two points and a length', () => {
    const { a, b, lengthM, mPerPx, tenMetresPx, scaleTolerance, pixelTolerance } = truth.scale;
    const trace = given(createTrace({ a: spotOf(a), b: spotOf(b), lengthM }));
    expectClose(trace.mPerPx, mPerPx, scaleTolerance, 'scale');
    const [from, to] = [trace.toPicture({ x: 0, y: 0 }), trace.toPicture({ x: 6, y: 8 })];
    expectClose(distance(from, to), tenMetresPx, pixelTolerance, '10 m in the picture');
    expectClose(distance(trace.toPlan(spotOf(a)), trace.toPlan(spotOf(b))), lengthM, scaleTolerance, 'line');
  });

  it.each(truth.errors)('taps off by $sigmaPx px on a line of $baselinePx px', (row) => {
    const line = { a: { x: 40, y: 9 }, b: { x: 40, y: 9 + row.baselinePx }, lengthM: 20 };
    const { errorFraction } = given(createTrace(line, row.sigmaPx));
    expectClose(errorFraction * 100, row.percent, row.tolerance, 'per cent');
    expectClose(errorFraction * 20, row.in20M, row.tolerance, 'metres in 20 m');
  });

  it.each(truth.homographies)('$what', ({ from, to, point, mapped, tolerance }) => {
    const map = given(createHomography(from.map(spotOf), to.map(spotOf)));
    const there = map.toPlan(spotOf(point));
    expectClose(there && distance(there, spotOf(mapped)), 0, tolerance, 'mapped');
    const back = there && map.toPicture(there);
    expectClose(back && distance(back, spotOf(point)), 0, 'six-digits', 'back again');
  });

  it('an L is a rectangle minus a rectangle', () => {
    const { ring, areaM2, tolerance, corner, ...sizes } = truth.lShape;
    const { outline } = given(lOutline({ ...sizes, corner: corner as CutCorner }));
    expect(outline).toEqual(ring.map(spotOf));
    expectClose(areaOf(outline), areaM2, tolerance, 'area');
    const whole = given(rectangleOutline(sizes.widthM, sizes.depthM)).outline;
    expectClose(areaOf(whole) - areaOf(outline), sizes.cutWidthM * sizes.cutDepthM, tolerance, 'cut');
  });

  it.each(truth.steps)('$what', ({ lengthM, steps, stepM, tolerance }) => {
    expectClose(given(stepFromKnownLength(lengthM, steps)).stepM, stepM, tolerance, 'step');
  });

  it('spread of a walked length: practised as published, else as estimated', () => {
    const { trainedFrom, trainedTo, untrained } = truth.pacing;
    const trained = given(lengthFromSteps(40, 0.65, true)).spreadFraction;
    expect(trained).toBeGreaterThanOrEqual(trainedFrom);
    expect(trained).toBeLessThanOrEqual(trainedTo);
    expect(given(lengthFromSteps(40, 0.65)).spreadFraction).toBe(untrained);
  });
});
