import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { headFlux, intensityToward } from '../../../core/light/flash-head.ts';
import { bareLamp } from '../../../core/light/lamps/bare-lamp.ts';
import { cardLamp } from '../../../core/light/lamps/card-lamp.ts';
import { umbrellaLamp } from '../../../core/light/lamps/umbrella-lamp.ts';
import { card, facingDeg, head, place, throughCube, tiltDeg, umbrella } from './lamp-inputs.ts';

const FEW = { numRuns: 12 };
const CELLS = 160;

describe('the light that a lamp says it has is the light that arrives around it', () => {
  it('bare, and turned to a ceiling or wall', () => {
    fc.assert(
      fc.property(head, place, facingDeg, tiltDeg, (one, at, facing, tilt) => {
        const lamp = bareLamp(one, at, facing, tilt);
        expect(lamp.flux).toBe(headFlux(one));
        expect(throughCube(lamp, 5, CELLS) / lamp.flux).toBeCloseTo(1, 2);
        const bounced = bareLamp(one, at, facing, -90);
        expect(throughCube(bounced, 5, CELLS) / lamp.flux).toBeCloseTo(1, 2);
      }),
      FEW,
    );
  });

  it('through an umbrella, close by as well as far away', () => {
    fc.assert(
      fc.property(head, umbrella, place, facingDeg, tiltDeg, (one, cloth, at, facing, tilt) => {
        const lamp = umbrellaLamp(one, { ...cloth, lossStops: undefined }, at, facing, tilt);
        for (const halfM of [2 * lamp.radiusM, 20]) {
          expect(throughCube(lamp, halfM, CELLS) / lamp.flux).toBeCloseTo(1, 2);
        }
        const measured = umbrellaLamp(one, cloth, at, facing, tilt);
        expect(throughCube(measured, 20, CELLS) / measured.flux).toBeCloseTo(1, 1.6);
      }),
      FEW,
    );
  });

  it('with a bounce card', () => {
    fc.assert(
      fc.property(head, card, place, facingDeg, tiltDeg, (one, white, at, facing, tilt) => {
        const lamp = cardLamp(one, white, at, facing, tilt);
        expect(throughCube(lamp, 5, CELLS) / lamp.flux).toBeCloseTo(1, 1.6);
      }),
      FEW,
    );
  });
});

describe('no modifier makes light', () => {
  it('an umbrella sends out at most what its head gives, whatever its loss', () => {
    fc.assert(
      fc.property(head, umbrella, place, (one, cloth, at) => {
        const lamp = umbrellaLamp(one, cloth, at, 0, 0);
        expect(lamp.flux).toBeGreaterThan(0);
        expect(lamp.flux).toBeLessThanOrEqual(headFlux(one) * (1 + 1e-9));
      }),
    );
  });

  it('nor does a card, and what passes it goes up with the beam of the head', () => {
    fc.assert(
      fc.property(head, card, place, facingDeg, (one, white, at, facing) => {
        const lamp = cardLamp(one, white, at, facing, 0);
        expect(lamp.flux).toBeLessThanOrEqual(headFlux(one) * (1 + 1e-9));
        const over = lamp.on(at.x, at.y, at.z + 3, 0, 0, -1);
        expect(over).toBeCloseTo((white.upFraction * intensityToward(one, 0)) / 9, 6);
        expect(lamp.radiusM).toBe(white.widthM / 2);
      }),
    );
  });

  it('the card loses what it is said to lose, on its axis and far away', () => {
    fc.assert(
      fc.property(head, card, facingDeg, (one, white, facing) => {
        fc.pre(white.upFraction < 0.99);
        const at = { x: 0, y: 0, z: 1.6 };
        const [lamp, bare] = [cardLamp(one, white, at, facing, 0), bareLamp(one, at, facing, 0)];
        const turn = (facing * Math.PI) / 180;
        const far = [100 * Math.sin(turn), -100 * Math.cos(turn), 1.6] as const;
        expect(Math.log2(bare.toward(...far) / lamp.toward(...far))).toBeCloseTo(white.lossStops, 4);
      }),
    );
  });
});
