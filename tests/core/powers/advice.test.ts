import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AdvisedLight, adviseOnPowers } from '../../../core/light/powers/advice.ts';
import { distanceForChangeM } from '../../../core/light/powers/distance-for-change.ts';
import type { PowerProblem } from '../../../core/light/powers/power-targets.ts';
import { luxSecondsAt } from '../../../core/light/umbrella.ts';

/** A key and a back light, each with a target of its own; light at full power in stops over correct. */
function problem(keyStops: number, backStops: number, ambient = 0): PowerProblem {
  const single = (name: string, perLight: number[]) =>
    ({ name, wantedStops: 0, weight: 1, measure: 'single', rows: [{ perLight, base: ambient }] }) as const;
  return {
    lights: ['K', 'B'].map((id) => ({ id, leastPowerStops: -7, isOff: false })),
    targets: [single('subject', [2 ** keyStops, 0]), single('rim', [0, 2 ** backStops])],
  };
}

function lights(keySet: number | null, backSet: number | null): AdvisedLight[] {
  return [
    { id: 'K', job: 'key', setStops: keySet, distanceM: 2.5, falloff: null },
    { id: 'B', job: 'back', setStops: backSet, distanceM: 6, falloff: null },
  ];
}

const advise = (of: PowerProblem, set: AdvisedLight[], iso = 1600, fNumber = 2, highestIso = 25600) =>
  adviseOnPowers({ problem: of, exposure: { iso, fNumber }, lights: set, highestIso });

describe('advice on powers', () => {
  it('nothing to say when all is set as it should be', () => {
    expect(advise(problem(6, 5), lights(-6, -5))).toEqual([]);
  });

  it('power first, each light by itself', () => {
    expect(advise(problem(6, 5), lights(-4, null))).toEqual([
      { kind: 'set-power', lightId: 'K', fromStops: -4, powerStops: -6 },
      { kind: 'set-power', lightId: 'B', fromStops: null, powerStops: -5 },
    ]);
  });

  it('a key at 1/8 asks for one stop of ISO; every power follows', () => {
    const [raise, ...rest] = advise(problem(3, 5), lights(-3, -5));
    expect(rest).toEqual([]);
    if (raise?.kind !== 'raise-iso') throw new Error('no ISO');
    expect(raise).toMatchObject({ because: 'key-above-sixteenth', lightId: 'K', iso: { label: '3200' } });
    expect(raise.after.lights.map(({ powerStops }) => powerStops)).toEqual([-4, -6]);
  });

  it('a back light above 1/16 asks for nothing', () => {
    expect(advise(problem(6, 1), lights(-6, -1))).toEqual([]);
  });

  it('ISO lifts the ambient too, so the flashes fall by more than the ISO rose', () => {
    const [raise] = advise(problem(3, 5, 0.3), lights(-3.667, -5.667)).filter(
      ({ kind }) => kind === 'raise-iso',
    );
    if (raise?.kind !== 'raise-iso') throw new Error('no ISO');
    const upStops = Math.log2(raise.iso.exact / 1600);
    expect(upStops).toBeCloseTo(1 / 3, 6);
    // 2^3·p + 0.3 = 1 before, (2^3·p + 0.3)·2^⅓ = 1 after.
    const before = Math.log2(0.7 / 8);
    const after = Math.log2((2 ** (-1 / 3) - 0.3) / 8);
    expect(after).toBeLessThan(before - 1 / 3);
    expect(Math.abs((raise.after.lights[0]?.powerStops ?? 0) - after)).toBeLessThanOrEqual(1 / 6 + 1e-9);
  });

  it('too weak at full: ISO, or nearer by the inverse square', () => {
    const advice = advise(problem(6, -2), lights(-6, 0));
    const raise = advice.find(({ kind }) => kind === 'raise-iso');
    // Within ⅓ stop counts as met: 2 stops short needs 1⅔ of ISO.
    expect(raise).toMatchObject({ because: 'too-weak', lightId: 'B', iso: { label: '5000' } });
    expect(advice.find(({ kind }) => kind === 'move-nearer')).toEqual({
      kind: 'move-nearer',
      lightId: 'B',
      distanceM: expect.closeTo(3, 9),
    });
    expect(advise(problem(6, -2), lights(-6, 0), 1600, 2, 3200).map(({ kind }) => kind)).toEqual([
      'move-nearer',
    ]);
  });

  it('too strong at the least power: back by the inverse square, or a smaller aperture with all powers', () => {
    const advice = advise(problem(9, 6), lights(-7, -6));
    expect(advice.map(({ kind }) => kind)).toEqual(['move-back', 'close-aperture']);
    expect(advice[0]).toEqual({ kind: 'move-back', lightId: 'K', distanceM: expect.closeTo(5, 9) });
    if (advice[1]?.kind !== 'close-aperture') throw new Error('no aperture');
    expect(advice[1].aperture.label).toBe('f/3.5');
    expect(advice[1].after.targets.map(({ hindrance }) => hindrance)).toEqual([null, null]);
    expect(advice[1].after.lights[1]?.powerStops).toBeCloseTo(-6 + 5 / 3, 9);
  });

  it('a light on the camera is never told to move', () => {
    const onCamera = lights(-7, -6).map((light): AdvisedLight => ({ ...light, job: 'camera' }));
    const kinds = advise(problem(9, -2), onCamera).map(({ kind }) => kind);
    expect(kinds).toContain('close-aperture');
    expect(kinds).not.toContain('move-back');
    expect(kinds).not.toContain('move-nearer');
  });

  it('says nothing of moving when it is the ambient that is too bright', () => {
    expect(advise(problem(6, 5, 4), lights(-7, -7)).map(({ kind }) => kind)).toEqual([]);
  });
});

describe('distance for a change of light', () => {
  const HEAD = { guideNumberM: 36, zoomMm: 35, leastPowerStops: -7 };
  const umbrella = { head: HEAD, umbrella: { diameterM: 1, forwardFraction: 0.5 } };
  const law = (distanceM: number) => luxSecondsAt(umbrella, { distanceM, offAxisDeg: 0, powerStops: 0 });

  it('by its own law: the light there is what was wanted', () => {
    const change = fc.double({ min: -3, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 1.5, max: 8, noNaN: true }), change, (distanceM, changeStops) => {
        const to = distanceForChangeM(distanceM, changeStops, law);
        if (to === null) expect(distanceM * 2 ** (-changeStops / 2)).toBeLessThan(0.8);
        else expect(Math.log2(law(to) / law(distanceM))).toBeCloseTo(changeStops, 6);
      }),
    );
  });

  it('an umbrella near by must come nearer than the inverse square says', () => {
    expect(distanceForChangeM(1.5, 1, law)).toBeLessThan(distanceForChangeM(1.5, 1, null) ?? 0);
  });

  it('none beyond where a stand can be', () => {
    expect(distanceForChangeM(2, 6, null)).toBeNull();
    expect(distanceForChangeM(10, -6, null)).toBeNull();
    expect(distanceForChangeM(2, 6, law)).toBeNull();
    expect(distanceForChangeM(0, 1, null)).toBeNull();
    expect(distanceForChangeM(2, 1, () => 0)).toBeNull();
  });
});
