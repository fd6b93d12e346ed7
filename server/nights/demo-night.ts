import { generateNKeysBetween } from 'fractional-indexing';
import type { MomentSeed, NightSeed } from '../../shared/document/create-night.ts';
import type { Entry } from '../../shared/document/schema.ts';

type FeatureSeed = Entry<'feature'>;
type View = Entry<'moment/view'>;

/** A hall of our own invention, 18 × 12 m, drawn with the top table's wall at the top of the plan. */
const ROOM = {
  outline: [
    { x: 0, y: 0 },
    { x: 18, y: 0 },
    { x: 18, y: 12 },
    { x: 0, y: 12 },
  ],
  ceilingM: 4.2,
};

const box = (
  kind: FeatureSeed['kind'],
  name: string,
  [x, y, widthM, depthM, heightM]: readonly [number, number, number, number, number],
  rest: Partial<FeatureSeed> = {},
): FeatureSeed => ({
  kind,
  name,
  at: { x, y },
  turnDeg: 0,
  shape: { kind: 'box', widthM, depthM },
  heightM,
  blocksLight: heightM > 1.8,
  blocksWalking: true,
  chairs: false,
  background: 'neither',
  ...rest,
});

const roundTable = (name: string, x: number, y: number): FeatureSeed => ({
  ...box('table', name, [x, y, 0, 0, 0.75]),
  shape: { kind: 'round', radiusM: 0.9 },
  chairs: true,
});

const onTheFloor = { blocksLight: false, blocksWalking: false } as const;

const FEATURES: Record<string, FeatureSeed> = {
  floor: box('dance-floor', 'Dance floor', [9, 6.2, 6, 5, 0], onTheFloor),
  top: box('table', 'Top table', [9, 1.4, 6, 0.9, 0.75], { chairs: true, background: 'wanted' }),
  band: box('band', 'Band', [2, 6.2, 2.4, 4, 1.9], { background: 'wanted', blocksLight: true }),
  bar: box('bar', 'Bar', [17.3, 5, 1, 4, 1.15], { background: 'unwanted' }),
  cake: {
    ...box('cake', 'Cake table', [15.2, 10.6, 0, 0, 1.1]),
    shape: { kind: 'round', radiusM: 0.6 },
    background: 'wanted',
  },
  lemon: roundTable('Lemon table', 3.2, 2.2),
  olive: roundTable('Olive table', 14.6, 2.2),
  fern: roundTable('Fern table', 3.2, 10.2),
  poppy: roundTable('Poppy table', 6.6, 10.4),
  thyme: roundTable('Thyme table', 11.4, 10.4),
  hatch: box('screen', 'Kitchen hatch', [6, 0.15, 1.8, 0.3, 2.1], { background: 'unwanted' }),
  garden: box('exit', 'Garden exit', [9, 11.95, 1.8, 0.1, 2.1], onTheFloor),
  foyer: box('exit', 'Foyer exit', [17.95, 8.8, 0.1, 1.6, 2.1], { ...onTheFloor, background: 'unwanted' }),
};

/** All three flashes of the demo night are of one make of our own invention. */
const SMALL_FLASH = {
  guideNumberM: 36,
  zoomMm: 35,
  leastPowerStops: -7,
  guideNumberKind: 'printed',
  recycleS: 2.2,
  flashesFull: 180,
} as const;

/** Lamps hang over the floor; toward the walls the hall is darker. */
const AMBIENT = {
  'at-floor': { spot: { x: 9, y: 6.2 }, ev100: 4 },
  'at-top': { spot: { x: 9, y: 0.8 }, ev100: 2.3 },
  'at-lemon': { spot: { x: 1.2, y: 1.2 }, ev100: 1.7 },
  'at-olive': { spot: { x: 16.8, y: 1.2 }, ev100: 1.7 },
  'at-fern': { spot: { x: 1.2, y: 10.8 }, ev100: 1.7 },
  'at-foyer': { spot: { x: 16.8, y: 10.8 }, ev100: 2 },
} as const;

const GEAR: Record<string, Entry<'gear'>> = {
  'head-k': {
    kind: 'head',
    name: 'Head for the key',
    ...SMALL_FLASH,
    massKg: 0.5,
  },
  'head-b': {
    kind: 'head',
    name: 'Head for the back light',
    ...SMALL_FLASH,
    massKg: 0.5,
  },
  'umbrella-1': {
    kind: 'umbrella',
    name: 'White umbrella, 1 m',
    diameterM: 1,
    forwardFraction: 0.5,
    massKg: 0.5,
  },
  'stand-1': {
    kind: 'stand',
    name: 'Stand',
    legs: 3,
    legRadiusM: 0.5,
    massKg: 1.5,
    centreM: 0.7,
    topM: 2.6,
    ballastKg: 5,
  },
  'flash-1': { kind: 'flash', name: 'Flash on the camera', ...SMALL_FLASH },
  'card-1': { kind: 'card', name: 'White bounce card', widthM: 0.15, lossStops: 1.5, upFraction: 0.5 },
};

const FULL_FRAME = { sensorWidthMm: 36, sensorHeightMm: 24 } as const;

function view(
  subject: readonly [string, number, number, number],
  camera: readonly [number, number],
  focalMm: number,
): View {
  const [name, x, y, facingDeg] = subject;
  return {
    subject: { name, spot: { x, y }, facingDeg, eyeM: 1.6 },
    camera: { spot: { x: camera[0], y: camera[1] }, heightM: 1.6 },
    frame: { focalMm, ...FULL_FRAME, upright: false },
  };
}

const DIM = { iso: 1600, fNumber: 2, shutterS: 2 ** (-22 / 3) };

const MOMENTS: readonly (readonly [string, string, string, View])[] = [
  ['entrances', 'Entrances', '19:05', view(['The couple', 15.8, 8.8, 270], [10.8, 8.4], 50)],
  ['first-dance', 'First dance', '19:20', view(['The couple', 9, 6, 180], [9.4, 10.2], 35)],
  ['toasts', 'Toasts', '20:10', view(['The speaker', 9, 2.4, 180], [9, 7.2], 85)],
  ['cake', 'Cake', '21:00', view(['The couple', 14.6, 9.8, 290], [11.2, 8.4], 50)],
  ['open-dancing', 'Open dancing', '21:20', view(['The dance floor', 9, 6.2, 180], [9, 9.6], 24)],
];

function moments(): Record<string, MomentSeed> {
  const places = generateNKeysBetween(null, null, MOMENTS.length);
  return Object.fromEntries(
    MOMENTS.map(([id, name, expected, seen], index) => [
      id,
      { name: { name, expected }, place: places[index] ?? `a${index}`, view: seen, exposure: DIM },
    ]),
  );
}

/**
 * The night every fresh server begins with: an invented reception in an invented hall.
 *
 * @param date the day of the night, ISO 8601 (2026-05-16)
 * @param title what the night is called; for a night made with `--new`
 */
export function demoNight(date: string, title = 'Demo night in the long hall'): NightSeed {
  return {
    title,
    date,
    units: 'metric',
    room: ROOM,
    finishes: {
      ceiling: 0.8,
      walls: 0.5,
      floor: 0.3,
      ceilingName: 'White ceiling',
      wallsName: 'Painted walls',
      floorName: 'Wooden floor',
    },
    ambientEv100: 4,
    ambientSpots: AMBIENT,
    cameraKit: { flashGear: 'flash-1', cardGear: 'card-1' },
    features: FEATURES,
    gear: GEAR,
    stands: {
      key: {
        kit: {
          letter: 'K',
          job: 'key',
          standGear: 'stand-1',
          headGear: 'head-k',
          umbrellaGear: 'umbrella-1',
        },
        mark: { spot: { x: 12.9, y: 9.1 }, heightM: 2.3, facingDeg: 308, tiltDeg: 15, powerStops: -6 },
      },
      back: {
        kit: { letter: 'B', job: 'back', standGear: 'stand-1', headGear: 'head-b', umbrellaGear: null },
        mark: { spot: { x: 5.4, y: 2.6 }, heightM: 2.3, facingDeg: 133, tiltDeg: 5, powerStops: -6 },
      },
    },
    moments: moments(),
    opens: 'first-dance',
  };
}
