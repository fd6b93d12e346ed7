import type { NightSeed } from '../../shared/document/create-night.ts';

const spot = (x: number, y: number) => ({ x, y });

/** A night as small as a night can be: an empty hall, one stand, one moment. */
export const smallNight = (title = 'Barn dance'): NightSeed => ({
  title,
  date: '2026-06-20',
  units: 'metric',
  room: { outline: [spot(0, 0), spot(10, 0), spot(10, 8), spot(0, 8)], ceilingM: 4 },
  ambientEv100: 3,
  features: {},
  gear: {
    tripod: {
      kind: 'stand',
      name: 'Tall stand',
      legs: 3,
      legRadiusM: 0.5,
      massKg: 2,
      centreM: 0.8,
      topM: 3,
      ballastKg: 0,
    },
    flash: {
      kind: 'head',
      name: 'Small flash',
      guideNumberM: 36,
      zoomMm: 35,
      leastPowerStops: -7,
      massKg: 0.5,
    },
  },
  stands: {
    k: {
      kit: { letter: 'K', job: 'key', standGear: 'tripod', headGear: 'flash', umbrellaGear: null },
      mark: { spot: spot(2, 2), heightM: 2, facingDeg: 45, tiltDeg: -20, powerStops: -4 },
    },
  },
  moments: {
    dance: {
      name: { name: 'First dance', expected: '20:15' },
      place: 'a0',
      view: {
        subject: { spot: spot(5, 4), facingDeg: 270, eyeM: 1.6, name: 'the couple' },
        camera: { spot: spot(5, 1), heightM: 1.6 },
        frame: { focalMm: 35, sensorWidthMm: 36, sensorHeightMm: 24, upright: false },
      },
      exposure: { iso: 1600, fNumber: 2.8, shutterS: 0.01 },
    },
  },
  opens: 'dance',
});
