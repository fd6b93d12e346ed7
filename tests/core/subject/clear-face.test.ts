import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearFaceChance, HEAD_HEIGHT_M, wayThroughCrowdM } from '../../../core/light/subject/clear-face.ts';

const FACE = { x: 0, y: 0, z: 1.55 };
const THROWS = 6000;

/** Seeded source of chance, 0 to 1 (mulberry32). */
function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** How many people a Poisson crowd has where so many are expected: gaps of an even stream are exponential. */
function poisson(chance: () => number, expected: number): number {
  let count = 0;
  let sum = -Math.log(1 - chance());
  while (sum < expected) {
    count += 1;
    sum += -Math.log(1 - chance());
  }
  return count;
}

/**
 * Throws crowds of upright cylinders around the way from the face (at 0, 0) along x, and asks of each whether the
 * straight line meets one below its top. `ends` counts bodies whose middle lies past where the line leaves the crowd.
 */
function share(
  seed: number,
  {
    personsPerM2,
    radiusM,
    planM,
    riseM,
  }: { personsPerM2: number; radiusM: number; planM: number; riseM: number },
  ends: 'left-out' | 'counted',
): number {
  const chance = seeded(seed);
  const widthM = planM + 2;
  let clear = 0;
  for (let turn = 0; turn < THROWS; turn += 1) {
    let isBlocked = false;
    const count = poisson(chance, personsPerM2 * widthM * 2);
    for (let person = 0; person < count; person += 1) {
      const [x, y] = [chance() * widthM, chance() * 2 - 1];
      if (Math.abs(y) >= radiusM) continue;
      const half = ends === 'counted' ? Math.sqrt(radiusM * radiusM - y * y) : 0;
      // Where the line enters the cylinder, on the face's side, it is lowest.
      const enters = Math.max(0, x - half);
      if (enters <= planM && FACE.z + (enters / planM) * riseM < HEAD_HEIGHT_M) isBlocked = true;
    }
    if (!isBlocked) clear += 1;
  }
  return clear / THROWS;
}

/** Four standard errors of a share of so many throws. */
const noise = (of: number) => 4 * Math.sqrt((of * (1 - of)) / THROWS) + 1e-9;

describe('chance that the face is clear', () => {
  const CASES = [
    { personsPerM2: 1, radiusM: 0.25, planM: 4, riseM: 0.45 },
    { personsPerM2: 0.5, radiusM: 0.25, planM: 3, riseM: 1 },
    { personsPerM2: 2, radiusM: 0.2, planM: 2, riseM: 0.6 },
    { personsPerM2: 1, radiusM: 0.3, planM: 5, riseM: 0.1 },
  ];

  it.each(CASES)('crowds thrown at random agree: %o', (given) => {
    const light = { x: given.planM, y: 0, z: FACE.z + given.riseM };
    const crowd = { personsPerM2: given.personsPerM2, bodyRadiusM: given.radiusM, topM: HEAD_HEIGHT_M };
    const computed = clearFaceChance(light, FACE, crowd);
    expect(Math.abs(share(7, given, 'left-out') - computed)).toBeLessThan(noise(computed));
    // With the half circle at the far end counted it is lower, by no more than the stated factor.
    const counted = share(11, given, 'counted');
    const least = computed * Math.exp((-given.personsPerM2 * Math.PI * given.radiusM ** 2) / 2);
    expect(counted).toBeLessThan(computed + noise(computed));
    expect(counted).toBeGreaterThan(least - noise(least));
  });

  it('falls with density, body and distance, and grows as the light rises', () => {
    const positive = (max: number) => fc.double({ min: 0.05, max, noNaN: true });
    fc.assert(
      fc.property(
        positive(3),
        positive(0.4),
        positive(8),
        positive(3),
        (personsPerM2, bodyRadiusM, planM, up) => {
          const of = (change: { n?: number; r?: number; d?: number; up?: number }) =>
            clearFaceChance({ x: change.d ?? planM, y: 0, z: FACE.z + (change.up ?? up) }, FACE, {
              personsPerM2: change.n ?? personsPerM2,
              bodyRadiusM: change.r ?? bodyRadiusM,
              topM: HEAD_HEIGHT_M,
            });
          const here = of({});
          expect(here).toBeGreaterThan(0);
          expect(here).toBeLessThan(1);
          expect(of({ n: personsPerM2 * 1.5 })).toBeLessThan(here);
          expect(of({ r: bodyRadiusM * 1.5 })).toBeLessThan(here);
          expect(of({ d: planM * 1.5 })).toBeLessThan(here);
          expect(of({ up: up * 1.5 })).toBeGreaterThanOrEqual(here);
        },
      ),
    );
  });

  it('the way through the crowd is the part below its top, from either end', () => {
    const light = { x: 3, y: 4, z: 2.55 };
    expect(wayThroughCrowdM(light, FACE, 1.8)).toBeCloseTo(5 * 0.25, 12);
    expect(wayThroughCrowdM(FACE, light, 1.8)).toBeCloseTo(5 * 0.25, 12);
    expect(wayThroughCrowdM(light, FACE, 3)).toBe(5);
    expect(wayThroughCrowdM(light, FACE, 1)).toBe(0);
    expect(clearFaceChance(light, FACE, { personsPerM2: 0, bodyRadiusM: 0.25, topM: 1.75 })).toBe(1);
  });
});
