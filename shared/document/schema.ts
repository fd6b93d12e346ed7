import * as z from 'zod/mini';
import { ROLES } from '../roles.ts';
import {
  cameraSchema,
  degrees,
  ev100,
  exposureSchema,
  id,
  instant,
  markSchema,
  name,
  spotSchema,
  text,
  within,
} from './fields.ts';
import { cameraLightSchema, frameSchema } from './frame-schema.ts';
import { gearSchema } from './gear-schema.ts';

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
  'frames',
  'log',
] as const;
export type Root = (typeof ROOTS)[number];

const shapeSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('box'), widthM: within(0.01, 200), depthM: within(0.01, 200) }),
  z.object({ kind: z.literal('round'), radiusM: within(0.01, 100) }),
  z.object({
    kind: z.literal('outline'),
    points: z.array(spotSchema).check(z.minLength(3), z.maxLength(200)),
  }),
]);

/** So many moments a running order may hold: a night that changes every three minutes for ten hours. */
export const MOST_MOMENTS = 200;

/** So many features a plan may hold: a hall of two hundred tables with all that stands between them, twice. */
export const MOST_FEATURES = 500;

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

/** Diffuse reflectance. Nothing sends all light back: from 1 on, light in a closed room would have no end. */
const reflectance = within(0, 0.95);

export const entrySchemas = {
  'about/schema': z.number().check(z.gte(1)),
  'about/night': z.object({ id, title: name, date: text(40) }),
  'about/units': z.enum(['metric', 'imperial']),
  'about/now': z.object({ momentId: id, at: instant, by: id }),
  /** What is on the camera: its flash, and the card behind it if there is one. */
  'about/camera': z.object({ flashGear: id, cardGear: z.nullable(id) }),
  'room/shape': z.object({
    outline: z.array(spotSchema).check(z.minLength(3), z.maxLength(200)),
    ceilingM: within(1.5, 60),
  }),
  'room/ambient': z.object({ ev100 }),
  'room/roof': z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('flat') }),
    z.object({ kind: z.literal('ridge'), peakM: within(1.5, 80), ridgeDeg: degrees }),
    z.object({ kind: z.literal('pyramid'), peakM: within(1.5, 80) }),
  ]),
  'room/finishes': z.object({
    ceiling: reflectance,
    walls: reflectance,
    floor: reflectance,
    ceilingName: z.exactOptional(name),
    wallsName: z.exactOptional(name),
    floorName: z.exactOptional(name),
  }),
  'room/ambient-spot': z.object({
    spot: spotSchema,
    ev100,
    at: instant,
    by: id,
    removedAt: z.nullable(instant),
  }),
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
  gear: gearSchema,
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
    camera: cameraSchema,
    frame: z.object({
      focalMm: within(4, 1200),
      sensorWidthMm: within(3, 100),
      sensorHeightMm: within(2, 100),
      upright: z.boolean(),
    }),
  }),
  'moment/exposure': exposureSchema,
  /** What the picture shall look like: levels in stops from mid-grey, and how wide the group is. */
  'moment/wish': z.object({
    subjectStops: within(-3, 3),
    backgroundStops: within(-8, 3),
    rimStops: within(-6, 6),
    groupWidthM: within(0.2, 20),
  }),
  'moment/camera-light': cameraLightSchema,
  /** It will not take place tonight, and stays in the list, struck out. */
  'moment/skipped': z.object({ by: id, at: instant, undoneAt: z.nullable(instant) }),
  'moment/removed': z.object({ by: id, at: instant, undoneAt: z.nullable(instant) }),
  'moment/announced': z.object({
    by: id,
    at: instant,
    /** What was on before, and whether this moment was struck out then: so that an undo can put both back. */
    before: z.nullable(id),
    wasSkipped: z.boolean(),
    undoneAt: z.nullable(instant),
  }),
  /** That a person has heard an announcement, and who pressed; whose ears it was is in the key. */
  'moment/heard': z.object({ by: id, at: instant }),
  'carry/of': z.object({ standId: id, from: markSchema, by: id, at: instant }),
  'carry/revision': z.object({
    number: within(1, 100000),
    mark: markSchema,
    why: z.enum(['call', 'nudge']),
    /** What a nudge changed, in the camera's sense, as the lead pressed it. */
    change: z.nullable(text(120)),
    by: id,
    at: instant,
    /** The mark that a nudge, and all that it folds, changed: what the change is told against. */
    from: z.exactOptional(markSchema),
    /** The nudge before it that was still under way: this one speaks for both (SPEC DOC23). */
    folds: z.exactOptional(id),
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
  'frame/of': frameSchema,
  'frame/removed': z.object({ by: id, at: instant, undoneAt: z.nullable(instant) }),
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
