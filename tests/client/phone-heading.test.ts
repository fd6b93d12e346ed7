import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { phoneHeadingDeg } from '../../client/device/phone-heading.ts';

const heading = (alphaDeg: number, betaDeg: number, gammaDeg: number) =>
  phoneHeadingDeg({ alphaDeg, betaDeg, gammaDeg });

/** The shorter way from one bearing to another. */
const between = (a: number, b: number) => ((((b - a + 180) % 360) + 360) % 360) - 180;

describe('where a phone points', () => {
  it('[ASSIST8] agrees with the W3C Device Orientation specification where it names a heading', () => {
    // "Flat, top pointing west": alpha 90, which is a heading of 360 − alpha.
    expect(heading(90, 0, 0)).toBeCloseTo(270, 6);
    // Its appendix A.1, back of the screen, with gamma 0: −alpha.
    expect(heading(30, 45, 0)).toBeCloseTo(330, 6);
    expect(heading(0, 100, 0)).toBeCloseTo(0, 6);
    // And upright, beta 90: −(alpha + gamma).
    expect(heading(10, 90, 20)).toBeCloseTo(330, 6);
  });

  it('[ASSIST8] changes by as much as the phone is turned about the vertical, however it is held', () => {
    const angle = fc.double({ min: 0, max: 360, noNaN: true });
    const held = fc.double({ min: -30, max: 120, noNaN: true });
    const rolled = fc.double({ min: -60, max: 60, noNaN: true });
    fc.assert(
      fc.property(angle, angle, held, rolled, (alpha, turnDeg, beta, gamma) => {
        const before = heading(alpha, beta, gamma);
        const after = heading(alpha - turnDeg, beta, gamma);
        fc.pre(before !== null && after !== null);
        expect(Math.abs(between(turnDeg, between(before ?? 0, after ?? 0)))).toBeLessThan(1e-6);
      }),
    );
  });

  it('[ASSIST8] does not jump while the phone is raised from lying flat to standing upright', () => {
    for (let beta = 0; beta <= 120; beta += 5) expect(heading(77, beta, 0)).toBeCloseTo(283, 6);
  });

  it('[ASSIST8] has none held over the head with the screen down', () => {
    expect(heading(0, -135, 0)).not.toBeNaN();
    expect(heading(0, 135, 0)).not.toBeNaN();
    expect(phoneHeadingDeg({ alphaDeg: 0, betaDeg: 0, gammaDeg: 0 })).toBe(0);
  });
});
