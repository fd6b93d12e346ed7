import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { elsewhereOf, offBy, offsetOf, PRESSES, pressed } from '../../client/state/elsewhere.ts';
import { elsewhereWords, offsetWords } from '../../client/words/elsewhere-words.ts';
import { markSetElsewhere } from '../../shared/document/commands/mark-set.ts';
import { calledTo, keyOf } from './asked-night.ts';

const spot = fc.record({
  x: fc.double({ min: 0, max: 20, noNaN: true }),
  y: fc.double({ min: 0, max: 20, noNaN: true }),
});

/** The key called straight up the plan, from (12.9, 9.1) to (12.9, 5.1), and set so far off. */
function setOff(x: number, y: number, note = '') {
  const evening = calledTo({ spot: { x: 12.9, y: 5.1 } });
  const { carry } = evening.asked;
  const mark = { ...carry.current.mark, spot: { x: 12.9 + x, y: 5.1 + y } };
  const on = { carryId: carry.id, revisionId: carry.current.id };
  expect(markSetElsewhere(evening.doc, evening.hand, { ...on, mark, note }).ok).toBe(true);
  const night = evening.read();
  return { night, elsewhere: elsewhereOf(night, keyOf(night).carry) };
}

describe('a stand that was set elsewhere', () => {
  it('[ASSIST7] presses add up, in the sense of who stands there', () => {
    // Facing right on the plan (90°), ahead is to the right and one's right is down.
    const right = offBy({ x: 1, y: 1 }, pressed('ahead', 2), 90);
    expect([right.x, right.y].map((metres) => metres.toFixed(6))).toEqual(['3.000000', '1.000000']);
    fc.assert(
      fc.property(
        spot,
        fc.integer({ min: 0, max: 359 }),
        fc.array(fc.constantFrom(...(['ahead', 'back', 'left', 'right'] as const)), { maxLength: 12 }),
        (start, headingDeg, presses) => {
          const end = presses.reduce((at, press) => offBy(at, pressed(press, 0.5), headingDeg), start);
          const count = (press: string) => presses.filter((one) => one === press).length;
          const off = offsetOf(start, end, headingDeg);
          expect(off.aheadM).toBeCloseTo((count('ahead') - count('back')) / 2, 6);
          expect(off.rightM).toBeCloseTo((count('right') - count('left')) / 2, 6);
        },
      ),
    );
    expect(Object.keys(PRESSES)).toHaveLength(4);
    expect(offsetWords({ aheadM: -1, rightM: -0.325 }, 'metric')).toBe('1 m back, 33 cm to the left');
    expect(offsetWords({ aheadM: 0.01, rightM: 0 }, 'metric')).toBe('on its mark');
  });

  it('[LEAD10] is told along the way it came, else as the camera sees it, with the note', () => {
    // The camera at (9.4, 10.2) looks at (9, 6): up the plan, so its right is right.
    const said = (x: number, y: number, note?: string) => {
      const { night, elsewhere } = setOff(x, y, note);
      return elsewhere && elsewhereWords('K', elsewhere, night.units);
    };
    expect(said(0, 1)).toBe('K set 1 m short: as near as they could');
    expect(said(0, -0.6, 'table')).toBe('K set 60 cm beyond: table');
    expect(said(0.8, 0.1, 'guests')).toBe('K set 81 cm to camera-right: guests');
    expect(said(-0.8, 0, 'no floor')).toBe('K set 80 cm to camera-left: no floor');
    expect(said(0, 0.03)).toBeNull();
  });

  it('[LEAD10][DOC24] stands where it is, not where it was called to', () => {
    const { night, elsewhere } = setOff(0, 1);
    expect(night.stands[0]?.place.mark.spot).toEqual({ x: 12.9, y: 6.1 });
    expect(elsewhere?.called.spot).toEqual({ x: 12.9, y: 5.1 });
  });
});
