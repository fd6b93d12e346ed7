import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { NudgeWay } from '../../core/guidance/camera-sense.ts';
import { callCarry } from '../../shared/document/commands/call-carry.ts';
import { setView } from '../../shared/document/commands/change-moment.ts';
import { markSet } from '../../shared/document/commands/mark-set.ts';
import { type Nudge, nudgeCarry } from '../../shared/document/commands/nudge-carry.ts';
import { withdrawCarry } from '../../shared/document/commands/withdraw-carry.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import { callKey, carryOf, demoDocument, done, markAt, refusal, standOf } from '../support/document-night.ts';

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** The demo night with camera and subject of the present moment at these spots. */
function seenFrom(camera: Spot, subject: Spot) {
  const one = demoDocument();
  const moment = readNight(one.doc).moment;
  if (!moment) throw new Error('the demo night opens on a moment');
  const view = {
    subject: { ...moment.view.subject, spot: subject },
    camera: { spot: camera, heightM: 1.6 },
    frame: moment.view.frame,
  };
  done(setView(one.doc, one.lead, moment.id, view));
  return one;
}

function nudgedSpot(camera: Spot, subject: Spot, way: NudgeWay, byM: number): Spot {
  const { doc, lead } = seenFrom(camera, subject);
  callKey(doc, lead, markAt(9, 6));
  const on = done(nudgeCarry(doc, lead, { standId: 'key', nudge: { kind: 'move', way, byM } }));
  return carryOf(doc, on).current.mark.spot;
}

/**
 * Camera-left is the left of somebody who looks along the camera axis (trade usage, *common practice*). The plan's y
 * runs down the page, so with the camera at the bottom of the plan looking up, camera-left is the plan's left.
 * The oblique numbers are a 3-4-5 triangle: from (2, 2) to (8, 10) is 6 along and 8 down, 10 m.
 */
const WORKED: readonly (readonly [string, Spot, Spot, NudgeWay, number, Spot])[] = [
  ['up the plan, camera-left', { x: 9, y: 12 }, { x: 9, y: 6 }, 'camera-left', 2, { x: 7, y: 6 }],
  ['up the plan, camera-right', { x: 9, y: 12 }, { x: 9, y: 6 }, 'camera-right', 2, { x: 11, y: 6 }],
  ['up the plan, nearer', { x: 9, y: 12 }, { x: 9, y: 6 }, 'nearer', 1, { x: 9, y: 7 }],
  ['up the plan, farther', { x: 9, y: 12 }, { x: 9, y: 6 }, 'farther', 1, { x: 9, y: 5 }],
  ['down the plan, camera-left', { x: 9, y: 1 }, { x: 9, y: 5 }, 'camera-left', 1, { x: 10, y: 6 }],
  ['obliquely, camera-left', { x: 2, y: 2 }, { x: 8, y: 10 }, 'camera-left', 1, { x: 9.8, y: 5.4 }],
  ['obliquely, camera-right', { x: 2, y: 2 }, { x: 8, y: 10 }, 'camera-right', 1, { x: 8.2, y: 6.6 }],
  ['obliquely, nearer', { x: 2, y: 2 }, { x: 8, y: 10 }, 'nearer', 2, { x: 7.8, y: 4.4 }],
  ['obliquely, farther', { x: 2, y: 2 }, { x: 8, y: 10 }, 'farther', 1, { x: 9.6, y: 6.8 }],
];

describe('nudges', () => {
  for (const [looking, camera, subject, way, byM, wanted] of WORKED) {
    it(`[DOC14] looking ${looking} moves a mark at (9, 6) by ${byM} m to (${wanted.x}, ${wanted.y})`, () => {
      const spot = nudgedSpot(camera, subject, way, byM);
      expect(spot.x).toBeCloseTo(wanted.x, 9);
      expect(spot.y).toBeCloseTo(wanted.y, 9);
    });
  }

  it('[DOC14] a nudge and its opposite bring the mark back, wherever the camera is', () => {
    const spot = fc.record({
      x: fc.double({ min: 0, max: 18, noNaN: true }),
      y: fc.double({ min: 0, max: 12, noNaN: true }),
    });
    const pairs = [
      ['camera-left', 'camera-right'],
      ['nearer', 'farther'],
    ] as const;
    fc.assert(
      fc.property(
        spot,
        fc.constantFrom(...pairs),
        fc.integer({ min: 1, max: 30 }),
        (camera, [there, back], tenths) => {
          fc.pre(Math.hypot(camera.x - 9, camera.y - 6) > 0.01);
          const { doc, lead } = seenFrom(camera, { x: 9, y: 6 });
          callKey(doc, lead, markAt(9, 6));
          for (const way of [there, back])
            done(nudgeCarry(doc, lead, { standId: 'key', nudge: { kind: 'move', way, byM: tenths / 10 } }));
          const { spot: end } = readNight(doc).carries[0]?.current.mark ?? markAt(Number.NaN, Number.NaN);
          expect(Math.hypot(end.x - 9, end.y - 6)).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 50 },
    );
  });

  it('[DOC14] a nudge makes the next revision, keeps the rest of the mark, and says what it changed', () => {
    const { doc, lead, clock } = seenFrom({ x: 9, y: 12 }, { x: 9, y: 6 });
    const first = callKey(doc, lead, markAt(9, 6));
    const nudges: readonly (readonly [Nudge, string])[] = [
      [{ kind: 'move', way: 'camera-left', byM: 0.5 }, 'camera-left 0.5 m'],
      [{ kind: 'height', byM: -0.2 }, 'height -0.2 m'],
      [{ kind: 'tilt', byDeg: 5 }, 'tilt +5 °'],
      [{ kind: 'turn', byDeg: 60 }, 'turn +60 °'],
      [{ kind: 'power', byStops: 1 }, 'power +1 stop'],
    ];
    nudges.forEach(([nudge, words], index) => {
      clock.pass(5000);
      const on = done(nudgeCarry(doc, lead, { standId: 'key', nudge }));
      expect(on.carryId).toBe(first.carryId);
      expect(carryOf(doc, on).current).toMatchObject({ number: index + 2, why: 'nudge', change: words });
    });
    expect(carryOf(doc, first).current.mark).toEqual(
      markAt(8.5, 6, { heightM: 2.3 - 0.2, tiltDeg: 20, facingDeg: 10, powerStops: -3 }),
    );
  });

  it('[DOC14] on a stand without a carry a nudge begins one where the stand is', () => {
    const { doc, lead } = seenFrom({ x: 9, y: 12 }, { x: 9, y: 6 });
    const place = standOf(doc, 'back').place.mark;
    const on = done(
      nudgeCarry(doc, lead, { standId: 'back', nudge: { kind: 'move', way: 'camera-left', byM: 1 } }),
    );
    const carry = carryOf(doc, on);
    expect(carry.from).toEqual(place);
    expect(carry.current).toMatchObject({ number: 1, why: 'nudge' });
    expect(carry.current.mark).toEqual({ ...place, spot: { x: place.spot.x - 1, y: place.spot.y } });
    expect(standOf(doc, 'back').place.mark, 'calling moves nothing yet').toEqual(place);
  });

  it('[DOC14] after a withdrawal a nudge begins a new carry where the stand is', () => {
    const { doc, lead } = demoDocument();
    const place = standOf(doc, 'key').place.mark;
    const first = callKey(doc, lead, markAt(3, 3));
    done(withdrawCarry(doc, lead, first.carryId));
    const on = done(nudgeCarry(doc, lead, { standId: 'key', nudge: { kind: 'height', byM: 0.1 } }));
    expect(on.carryId).not.toBe(first.carryId);
    expect(carryOf(doc, on)).toMatchObject({ state: 'called', from: place });
    expect(carryOf(doc, on).current.mark).toEqual({ ...place, heightM: place.heightM + 0.1 });
    expect(carryOf(doc, first).state).toBe('withdrawn');
  });

  it('[DOC14] a nudge after set opens the carry again, and does not move the stand by itself', () => {
    const { doc, lead, assistant } = demoDocument();
    const first = done(callCarry(doc, lead, { standId: 'key', mark: markAt(9, 6) }));
    done(markSet(doc, assistant, first));
    const on = done(nudgeCarry(doc, lead, { standId: 'key', nudge: { kind: 'power', byStops: -1 } }));
    expect(carryOf(doc, on)).toMatchObject({ id: first.carryId, state: 'called' });
    expect(standOf(doc, 'key').place.mark.powerStops).toBe(-4);
  });

  it('[DOC14] a camera that stands on the subject has no left, and a nudge off the plan is refused', () => {
    const { doc, lead } = seenFrom({ x: 9, y: 6 }, { x: 9, y: 6 });
    const left: Nudge = { kind: 'move', way: 'camera-left', byM: 1 };
    expect(refusal(nudgeCarry(doc, lead, { standId: 'key', nudge: left }))).toBe('no-camera-sense');
    const raised: Nudge = { kind: 'height', byM: 7 };
    expect(refusal(nudgeCarry(doc, lead, { standId: 'key', nudge: raised }))).toBe('out-of-range');
  });
});
