import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lightSheet } from '../../../core/light/light-sheet.ts';
import type { LightSheetInput } from '../../../core/light/light-sheet-input.ts';
import { aimAt } from '../../../core/placing/mark.ts';

const SUBJECT = { spot: { x: 9, y: 6 }, eyeM: 1.6 };

function inputAt(spot: { x: number; y: number }, powerStops = -6): LightSheetInput {
  const heightM = 2.4;
  return {
    source: {
      // About what a head with a printed 36 m gives with no room about it.
      head: { guideNumberM: 30, zoomMm: 35, leastPowerStops: -7 },
      umbrella: { diameterM: 1, forwardFraction: 0.5 },
    },
    mark: { spot, heightM, ...aimAt(spot, heightM, SUBJECT.spot, SUBJECT.eyeM), powerStops },
    subject: SUBJECT,
    camera: { spot: { x: 9, y: 10 }, heightM: 1.6 },
    frame: { focalMm: 50, sensorWidthMm: 36, sensorHeightMm: 24, upright: false },
    exposure: { iso: 1600, fNumber: 2, shutterS: 1 / 128 },
    ambientEv100: 4,
    returnedLuxSeconds: 0,
    othersLuxSeconds: 0,
    targetStops: 0,
  };
}

function sheetOf(input: LightSheetInput) {
  const sheet = lightSheet(input);
  if (sheet.kind === 'cannot') throw new Error(sheet.reason);
  return sheet;
}

const around = fc.record({
  x: fc.double({ min: 0, max: 18, noNaN: true }),
  y: fc.double({ min: 0, max: 12, noNaN: true }),
});

describe('light sheet', () => {
  it('gives a key at 45° camera-left its name, side and numbers', () => {
    const sheet = sheetOf(inputAt({ x: 7.2, y: 7.8 }));
    expect(sheet).toMatchObject({ side: 'camera-left', pattern: 'rembrandt', inFrame: { part: 'none' } });
    expect(sheet.azimuthDeg).toBeCloseTo(-45, 6);
    expect(sheet.ambientStops).toBeCloseTo(-1, 9);
    expect(sheet.powerForZero.kind).toBe('power');
  });

  it('set to the power that it gives, the total is within a sixth of a stop of the target', () => {
    fc.assert(
      fc.property(around, fc.double({ min: -1, max: 1, noNaN: true }), (spot, targetStops) => {
        fc.pre(Math.hypot(spot.x - 9, spot.y - 6) > 0.3);
        const { powerForZero } = sheetOf({ ...inputAt(spot), targetStops });
        if (powerForZero.kind !== 'power') return;
        const set = sheetOf({ ...inputAt(spot, powerForZero.powerStops), targetStops });
        expect(set.totalStops).toBeCloseTo(powerForZero.resultStops, 9);
        expect(Math.abs(set.totalStops - targetStops)).toBeLessThanOrEqual(1 / 6 + 1e-6);
      }),
    );
  });

  it('a walking lead keeps the exposure of the stand’s light (common practice)', () => {
    fc.assert(
      fc.property(around, (cameraSpot) => {
        fc.pre(Math.hypot(cameraSpot.x - 9, cameraSpot.y - 6) > 0.4);
        const input = inputAt({ x: 7.2, y: 7.8 });
        const walked = sheetOf({ ...input, camera: { ...input.camera, spot: cameraSpot } });
        expect(walked.keyStops).toBe(sheetOf(input).keyStops);
        expect(walked.powerForZero).toEqual(sheetOf(input).powerForZero);
      }),
    );
  });

  it('turning the head away by a bearing costs light, as much to either side; tilt does too', () => {
    const input = inputAt({ x: 7.2, y: 7.8 });
    const turned = (byDeg: number, tiltBy: number) =>
      sheetOf({
        ...input,
        mark: {
          ...input.mark,
          facingDeg: input.mark.facingDeg + byDeg,
          tiltDeg: input.mark.tiltDeg + tiltBy,
        },
      }).keyStops;
    expect(turned(60, 0)).toBeCloseTo(turned(-60, 0), 9);
    expect(turned(60, 0)).toBeLessThan(turned(0, 0) - 0.8);
    expect(turned(0, 45)).toBeCloseTo(turned(0, -45), 9);
    expect(turned(0, 45)).toBeLessThan(turned(0, 0) - 0.4);
    // Facing away, tilted past straight down, comes out as facing the subject from above again.
    expect(turned(180, 180 - 2 * input.mark.tiltDeg)).toBeCloseTo(turned(0, 0), 9);
  });

  it('without ambient the total is the key', () => {
    const sheet = sheetOf({ ...inputAt({ x: 7.2, y: 7.8 }), ambientEv100: null });
    expect(sheet.ambientStops).toBeNull();
    expect(sheet.totalStops).toBe(sheet.keyStops);
  });

  it('adds what the room returns with the power of the light, and the other lights without it', () => {
    const level = fc.oneof(fc.constant(0), fc.double({ min: 1e-6, max: 1e3, noNaN: true }));
    fc.assert(
      fc.property(
        around,
        level,
        level,
        fc.double({ min: -7, max: 0, noNaN: true }),
        (spot, back, others, p) => {
          fc.pre(Math.hypot(spot.x - 9, spot.y - 6) > 0.3);
          const input = { ...inputAt(spot, p), returnedLuxSeconds: back, othersLuxSeconds: others };
          const sheet = sheetOf(input);
          expect(sheet.keyStops).toBe(sheetOf(inputAt(spot, p)).keyStops);
          // One stop over at ISO 1600, f/2 is 1.25 lx·s; EV 4 for 1/128 s is 40 lx/128.
          const light = 0.625 * 2 ** sheet.keyStops + back * 2 ** p + others + 40 / 128;
          expect(sheet.totalStops).toBeCloseTo(Math.log2(light / 0.625), 9);
          if (back > 0) expect(sheet.returnedStops).toBeCloseTo(Math.log2((back * 2 ** p) / 0.625), 9);
          else expect(sheet.returnedStops).toBeNull();
          if (sheet.powerForZero.kind !== 'power') return;
          const set = sheetOf({
            ...input,
            mark: { ...input.mark, powerStops: sheet.powerForZero.powerStops },
          });
          expect(set.totalStops).toBeCloseTo(sheet.powerForZero.resultStops, 9);
        },
      ),
    );
  });

  it('other lights at the target already leave nothing for the key', () => {
    const input = inputAt({ x: 7.2, y: 7.8 });
    expect(sheetOf({ ...input, othersLuxSeconds: 0.7 }).powerForZero.kind).toBe('ambient-alone');
  });

  it('another meter constant moves the light of the flash, not what is ambient', () => {
    const input = inputAt({ x: 7.2, y: 7.8 });
    const [sheet, other] = [sheetOf(input), lightSheet(input, 500)];
    if (other.kind === 'cannot') throw new Error(other.reason);
    expect(sheet.keyStops - other.keyStops).toBeCloseTo(1, 9);
    expect(other.ambientStops).toBe(sheet.ambientStops);
    expect(lightSheet(input, 0)).toMatchObject({ kind: 'cannot' });
  });

  it('sees the stand in the picture when it stands behind the couple', () => {
    expect(sheetOf(inputAt({ x: 9, y: 2 })).inFrame.part).toBe('umbrella');
    const bare = { ...inputAt({ x: 9, y: 2 }) };
    expect(sheetOf({ ...bare, source: { ...bare.source, umbrella: null } }).inFrame.part).toBe('head');
  });

  it('says in words why it cannot', () => {
    const input = inputAt({ x: 7.2, y: 7.8 });
    const { head } = input.source;
    const reasonOf = (changed: Partial<LightSheetInput>) => {
      const sheet = lightSheet({ ...input, ...changed });
      return sheet.kind === 'cannot' ? sheet.reason : 'a sheet';
    };
    const { exposure, mark, camera } = input;
    expect(reasonOf({ source: { head: { ...head, guideNumberM: 0 }, umbrella: null } })).toMatch(
      /guide number is 0 m/,
    );
    expect(reasonOf({ exposure: { ...exposure, iso: 1e9 } })).toMatch(/ISO is 1000000000/);
    expect(reasonOf({ exposure: { ...exposure, shutterS: Number.NaN } })).toMatch(
      /shutter time is not a number/,
    );
    expect(reasonOf({ camera: { ...camera, spot: SUBJECT.spot } })).toMatch(/camera stands on the subject/);
    expect(reasonOf({ mark: { ...mark, spot: SUBJECT.spot, heightM: 1.7 } })).toMatch(
      /light stands on the subject/,
    );
    expect(
      reasonOf({ source: { head, umbrella: null }, mark: { ...mark, facingDeg: mark.facingDeg + 180 } }),
    ).toMatch(/faces away/);
    const umbrella = { diameterM: 1, forwardFraction: 0.7, backFraction: 0.4 };
    expect(reasonOf({ source: { head, umbrella } })).toMatch(/0.7 of the light forward and 0.4 back/);
    expect(reasonOf({ source: { head, umbrella: { ...umbrella, backFraction: 0.3 } } })).toBe('a sheet');
    expect(reasonOf({ source: { head, umbrella: { ...umbrella, backFraction: undefined } } })).toBe(
      'a sheet',
    );
    expect(reasonOf({})).toBe('a sheet');
  });

  it('draws the line for "on the subject" at 0.3 m', () => {
    const kindAt = (awayM: number) => {
      const beside = { x: SUBJECT.spot.x - awayM, y: SUBJECT.spot.y };
      const level = {
        ...inputAt(beside),
        mark: { ...inputAt(beside).mark, heightM: SUBJECT.eyeM, tiltDeg: 0 },
      };
      const camera = { spot: { x: SUBJECT.spot.x, y: SUBJECT.spot.y + awayM }, heightM: 1.6 };
      return [lightSheet(level).kind, lightSheet({ ...inputAt({ x: 7.2, y: 7.8 }), camera }).kind];
    };
    expect(kindAt(0.295)).toEqual(['cannot', 'cannot']);
    expect(kindAt(0.305)).toEqual(['sheet', 'sheet']);
  });

  it('every number that it reads is checked for its range', () => {
    const paths = [
      'source.head.guideNumberM',
      'source.head.zoomMm',
      'source.head.leastPowerStops',
      'source.umbrella.diameterM',
      'source.umbrella.forwardFraction',
      'source.umbrella.backFraction',
      'source.umbrella.lossStops',
      'mark.spot.x',
      'mark.spot.y',
      'mark.heightM',
      'mark.facingDeg',
      'mark.tiltDeg',
      'mark.powerStops',
      'subject.spot.x',
      'subject.eyeM',
      'camera.spot.y',
      'camera.heightM',
      'frame.focalMm',
      'frame.sensorWidthMm',
      'frame.sensorHeightMm',
      'exposure.iso',
      'exposure.fNumber',
      'exposure.shutterS',
      'ambientEv100',
      'returnedLuxSeconds',
      'othersLuxSeconds',
      'targetStops',
    ];
    for (const path of paths) {
      for (const wrong of [Number.NaN, 1e12, -1e12]) {
        const input = structuredClone(inputAt({ x: 7.2, y: 7.8 })) as unknown as Record<string, unknown>;
        const keys = path.split('.');
        const last = keys.pop() ?? '';
        const holder = keys.reduce((inner, key) => inner[key] as Record<string, unknown>, input);
        holder[last] = wrong;
        expect(lightSheet(input as unknown as LightSheetInput), `${path} = ${wrong}`).toMatchObject({
          kind: 'cannot',
        });
      }
    }
  });
});
