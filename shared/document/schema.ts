import * as z from 'zod/mini';
import { ID_PATTERN } from '../ids.ts';
import { ROLES } from '../roles.ts';

/**
 * The night document, version 1. Every root is a flat Y.Map whose values are plain JSON: values that change
 * together are one value, values that different people change have keys of their own (SPEC DOC1, DOC2).
 * Changes to it are additive; a change that is not raises the number and migrates on the server.
 */
export const SCHEMA_VERSION = 1;

export const ROOTS = [
  'about',
  'room',
  'features',
  'gear',
  'stands',
  'moments',
  'carries',
  'people',
  'log',
] as const;
export type Root = (typeof ROOTS)[number];

const id = z.string().check(z.regex(ID_PATTERN));
const within = (least: number, most: number) => z.number().check(z.gte(least), z.lte(most));
const text = (longest: number) => z.string().check(z.maxLength(longest));
const name = z.string().check(z.minLength(1), z.maxLength(80));

/** Milliseconds since 1970 by the server's clock, as this phone estimates it. */
const instant = within(0, 8.64e15);
const degrees = within(-360, 360);

const spotSchema = z.object({ x: within(-500, 500), y: within(-500, 500) });

/** Where a light belongs: metres, degrees, power as log2 of the fraction (0 = full, -6 = 1/64). */
export const markSchema = z.object({
  spot: spotSchema,
  heightM: within(0.1, 8),
  facingDeg: degrees,
  tiltDeg: within(-90, 90),
  powerStops: within(-10, 0),
});

const exposureSchema = z.object({
  iso: within(25, 204800),
  fNumber: within(0.7, 64),
  shutterS: within(1 / 16000, 60),
});

const shapeSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('box'), widthM: within(0.01, 200), depthM: within(0.01, 200) }),
  z.object({ kind: z.literal('round'), radiusM: within(0.01, 100) }),
  z.object({
    kind: z.literal('outline'),
    points: z.array(spotSchema).check(z.minLength(3), z.maxLength(200)),
  }),
]);

const FEATURE_KINDS = [
  'dance-floor',
  'table',
  'bar',
  'band',
  'cake',
  'pillar',
  'door',
  'exit',
  'screen',
  'other',
] as const;

export const entrySchemas = {
  'about/schema': z.number().check(z.gte(1)),
  'about/night': z.object({ id, title: name, date: text(40) }),
  'about/units': z.enum(['metric', 'imperial']),
  'about/now': z.object({ momentId: id, at: instant, by: id }),
  'room/shape': z.object({
    outline: z.array(spotSchema).check(z.minLength(3), z.maxLength(200)),
    ceilingM: within(1.5, 60),
  }),
  'room/ambient': z.object({ ev100: within(-6, 16) }),
  feature: z.object({
    kind: z.enum(FEATURE_KINDS),
    name,
    at: spotSchema,
    turnDeg: degrees,
    shape: shapeSchema,
    heightM: within(0, 60),
    blocksLight: z.boolean(),
    blocksWalking: z.boolean(),
    chairs: z.boolean(),
    background: z.enum(['wanted', 'unwanted', 'neither']),
  }),
  gear: z.discriminatedUnion('kind', [
    z.object({
      kind: z.literal('head'),
      name,
      guideNumberM: within(1, 200),
      zoomMm: within(8, 400),
      leastPowerStops: within(-10, 0),
      massKg: within(0.05, 20),
    }),
    z.object({
      kind: z.literal('umbrella'),
      name,
      diameterM: within(0.2, 3),
      forwardFraction: within(0.01, 1),
      massKg: within(0.05, 10),
    }),
    z.object({
      kind: z.literal('stand'),
      name,
      legs: within(3, 5),
      legRadiusM: within(0.1, 2),
      massKg: within(0.2, 40),
      centreM: within(0.05, 4),
      topM: within(0.5, 8),
      ballastKg: within(0, 100),
    }),
  ]),
  'stand/kit': z.object({
    letter: z.string().check(z.minLength(1), z.maxLength(2)),
    job: z.enum(['key', 'back']),
    standGear: id,
    headGear: id,
    umbrellaGear: z.nullable(id),
  }),
  'stand/at': z.object({
    mark: markSchema,
    at: instant,
    by: id,
    carry: z.nullable(z.object({ carryId: id, revisionId: id })),
  }),
  'moment/name': z.object({ name, expected: z.nullable(text(40)) }),
  'moment/place': z.string().check(z.minLength(1), z.maxLength(200)),
  'moment/view': z.object({
    subject: z.object({ spot: spotSchema, facingDeg: degrees, eyeM: within(0.3, 3), name }),
    camera: z.object({ spot: spotSchema, heightM: within(0.1, 4) }),
    frame: z.object({
      focalMm: within(4, 1200),
      sensorWidthMm: within(3, 100),
      sensorHeightMm: within(2, 100),
      upright: z.boolean(),
    }),
  }),
  'moment/exposure': exposureSchema,
  'carry/of': z.object({ standId: id, from: markSchema, by: id, at: instant }),
  'carry/revision': z.object({
    number: within(1, 100000),
    mark: markSchema,
    why: z.enum(['call', 'nudge']),
    /** What a nudge changed, in the camera's sense, as the lead pressed it. */
    change: z.nullable(text(120)),
    by: id,
    at: instant,
  }),
  'carry/stamp': z.object({
    by: id,
    at: instant,
    /** The mark as the phone that stamps it understood it: the lead's plan draws this one. */
    echo: z.nullable(markSchema),
    reason: z.nullable(text(200)),
    /** For "set": where the stand stood before, so that an undo can put it back. */
    before: z.nullable(markSchema),
    undoneAt: z.nullable(instant),
  }),
  'carry/withdrawn': z.object({ by: id, at: instant, undoneAt: z.nullable(instant) }),
  'carry/withdrawn-seen': z.object({ by: id, at: instant }),
  person: z.object({ name, role: z.enum(ROLES), stepM: within(0.3, 1.2) }),
  log: z.object({ by: id, at: instant, what: text(60), about: text(200), detail: z.nullable(text(400)) }),
} as const;

export type EntryKind = keyof typeof entrySchemas;
export type Entry<Kind extends EntryKind> = z.infer<(typeof entrySchemas)[Kind]>;

export type Mark = z.infer<typeof markSchema>;
export type Units = Entry<'about/units'>;
export type FeatureKind = (typeof FEATURE_KINDS)[number];
export type GearItem = Entry<'gear'>;

/**
 * What can be said of one revision. `held` is the lead's own: the call waited too long for the link and is
 * not shown to the assistant until it is let go (SPEC DOC11).
 */
export const STAMPS = ['held', 'delivered', 'seen', 'heard', 'carrying', 'cant', 'set'] as const;
export type StampKind = (typeof STAMPS)[number];
