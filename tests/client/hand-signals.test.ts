import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { handSignals } from '../../client/state/hand-signals.ts';
import { armWords, stepsWords, whichWords } from '../../client/words/hand-words.ts';
import { aNight } from './asked-night.ts';

const night = aNight().read();
const [key, back] = night.stands;
if (!key || !back) throw new Error('no stands');
/** Of the first dance of the demo night. */
const CAMERA = { x: 9.4, y: 10.2 };
const STEP_M = 0.65;

describe('a carry as hand signals', () => {
  it('[LEAD11] who walks as the arm points and as many steps as the fingers say comes to the mark', () => {
    const spots = fc.record({
      x: fc.double({ min: 0.5, max: 17.5, noNaN: true }),
      y: fc.double({ min: 0.5, max: 11.5, noNaN: true }),
    });
    fc.assert(
      fc.property(spots, (spot) => {
        const signals = handSignals(night, key, { ...key.place.mark, spot });
        let at = key.place.mark.spot;
        for (const { armDeg, ownDeg, steps } of signals?.legs ?? []) {
          const sight = Math.atan2(at.x - CAMERA.x, CAMERA.y - at.y);
          const way = sight + (armDeg * Math.PI) / 180;
          // Who looks at the lead faces the other way round, and has the same way before them.
          const own = sight + Math.PI + (ownDeg * Math.PI) / 180;
          expect(Math.cos(way - own)).toBeCloseTo(1, 9);
          at = { x: at.x + Math.sin(way) * steps * STEP_M, y: at.y - Math.cos(way) * steps * STEP_M };
        }
        // Each leg is rounded to whole steps, so each may end half a step off.
        const legs = signals?.legs.length ?? 0;
        expect(Math.hypot(at.x - spot.x, at.y - spot.y)).toBeLessThanOrEqual(
          0.5 * STEP_M * legs * 1.2 + 0.06,
        );
      }),
      { numRuns: 150 },
    );
  });

  it('[LEAD11] says in words what is drawn', () => {
    // From (12.9, 9.1) to the right of a lead who stands at (9.4, 10.2) and looks at it: down the plan.
    const signals = handSignals(night, key, { ...key.place.mark, spot: { x: 13.4, y: 11 } });
    const [leg] = signals?.legs ?? [];
    if (!signals || !leg) throw new Error('no signals');
    expect(whichWords(signals)).toBe('1 finger: K');
    expect(armWords(leg)).toBe('Point to your right: their left, as they look at you');
    expect(stepsWords(leg.steps)).toBe('3 steps: 3 fingers');
    const second = handSignals(night, back, back.place.mark);
    expect(second && whichWords(second)).toBe('2 fingers: B');
    expect(second?.legs).toEqual([]);
    expect([0.5, 1, 10, 13, 20].map(stepsWords)).toEqual([
      'half a step: finger and thumb apart',
      '1 step: 1 finger',
      '10 steps: a fist',
      '13 steps: a fist and 3 fingers',
      '20 steps: 2 fists',
    ]);
  });

  it('[LEAD11] says that there is no way, and points straight', () => {
    const signals = handSignals(night, key, { ...key.place.mark, spot: { x: 14.6, y: 2.2 } });
    expect(signals?.noWay).toBe('the mark is on the olive table');
    expect(signals?.legs).toHaveLength(1);
  });
});
