import { isDeepStrictEqual } from 'node:util';
import type * as Y from 'yjs';
import {
  measureAmbient,
  removeAmbient,
  restoreAmbient,
} from '../../shared/document/commands/ambient-reading.ts';
import { setCameraKit, setGear } from '../../shared/document/commands/change-gear.ts';
import { setCameraLight, setWish } from '../../shared/document/commands/change-moment.ts';
import { setCeiling, setFinishes, setRoof } from '../../shared/document/commands/change-room.ts';
import {
  recordTestFrame,
  removeTestFrame,
  restoreTestFrame,
} from '../../shared/document/commands/test-frame.ts';
import type { Outcome } from '../../shared/document/outcome.ts';
import { rootOf } from '../../shared/document/roots.ts';
import type { Root } from '../../shared/document/schema.ts';
import type { Night } from '../../shared/document/snapshot.ts';
import type { Hand } from '../../shared/document/transact.ts';
import { frameOf } from './document-commands.ts';

/** What a press about the light needs to know. */
export interface LightMoment {
  readonly doc: Y.Doc;
  readonly hand: Hand;
  readonly night: Night;
  readonly standId: string;
  readonly size: number;
}

/** What a command answered, and what the phone that gave it must show if it was accepted. */
export interface Told {
  readonly outcome: Outcome<object>;
  readonly shows: (after: Night) => boolean;
}

const momentId = ({ night, size }: LightMoment): string =>
  night.moments[size % Math.max(1, night.moments.length)]?.id ?? 'none';
const momentIn = (night: Night, id: string) => night.moments.find((known) => known.id === id);

/** Ids of a root of which the night shows none, though the document holds them. */
const hidden = (doc: Y.Doc, root: Root, key: RegExp, shown: readonly { readonly id: string }[]): string[] =>
  [...rootOf(doc, root).keys()]
    .flatMap((text) => key.exec(text)?.[1] ?? [])
    .filter((id) => !shown.some((one) => one.id === id))
    .sort();

const among = (ids: readonly string[], size: number): string => ids[size % Math.max(1, ids.length)] ?? 'none';

/** What is pressed about the light: the room, the gear, the wish of a moment, test frames. */
export const LIGHT_ACTS = {
  roof: ({ doc, hand, size }: LightMoment): Told => {
    const roof =
      size % 2 === 0
        ? ({ kind: 'flat' } as const)
        : ({ kind: 'ridge', peakM: 5 + (size % 7), ridgeDeg: size % 180 } as const);
    return { outcome: setRoof(doc, hand, roof), shows: (after) => isDeepStrictEqual(after.roof, roof) };
  },
  finishes: ({ doc, hand, size }: LightMoment): Told => {
    const tones = { ceiling: (size % 95) / 100, walls: 0.5, floor: 0.3 };
    const finishes = size % 3 === 0 ? { ...tones, wallsName: 'Drapes' } : tones;
    return {
      outcome: setFinishes(doc, hand, finishes),
      shows: (after) => isDeepStrictEqual(after.finishes, finishes),
    };
  },
  ceiling: ({ doc, hand, size }: LightMoment): Told => ({
    outcome: setCeiling(doc, hand, 3 + (size % 50) / 10),
    shows: (after) => after.room?.ceilingM === 3 + (size % 50) / 10,
  }),
  'measure ambient': ({ doc, hand, size }: LightMoment): Told => {
    const spot = { x: size % 18, y: size % 12 };
    const outcome = measureAmbient(doc, hand, spot, (size % 60) / 10);
    return {
      outcome,
      shows: ({ ambientSpots }) =>
        outcome.ok && ambientSpots.some(({ id, spot: at }) => id === outcome.readingId && at.x === spot.x),
    };
  },
  'remove ambient': ({ doc, hand, night, size }: LightMoment): Told => {
    const id = among(
      night.ambientSpots.map((reading) => reading.id),
      size,
    );
    return {
      outcome: removeAmbient(doc, hand, id),
      shows: (after) => after.ambientSpots.every((reading) => reading.id !== id),
    };
  },
  'restore ambient': ({ doc, hand, night, size }: LightMoment): Told => {
    const id = among(hidden(doc, 'room', /^ambient\/([\w-]+)$/, night.ambientSpots), size);
    return {
      outcome: restoreAmbient(doc, hand, id),
      shows: (after) => after.ambientSpots.some((reading) => reading.id === id),
    };
  },
  gear: ({ doc, hand, size }: LightMoment): Told => {
    const card = { kind: 'card' as const, name: 'Card', widthM: 0.2, lossStops: size % 5, upFraction: 0.4 };
    const gearId = `card-${size % 3}`;
    return {
      outcome: setGear(doc, hand, gearId, card),
      shows: (after) =>
        isDeepStrictEqual([...after.gear].find(([id]) => id === gearId)?.[1].name, card.name) &&
        after.skipped.length === 0,
    };
  },
  'camera kit': ({ doc, hand, size }: LightMoment): Told => {
    const kit = { flashGear: 'flash-1', cardGear: size % 2 === 0 ? 'card-1' : null };
    return {
      outcome: setCameraKit(doc, hand, kit),
      shows: (after) => isDeepStrictEqual(after.cameraKit, kit),
    };
  },
  wish: (moment: LightMoment): Told => {
    const { doc, hand, size } = moment;
    const id = momentId(moment);
    const wish = { subjectStops: 0, backgroundStops: -(size % 5), rimStops: size % 2, groupWidthM: 2 };
    return {
      outcome: setWish(doc, hand, id, wish),
      shows: (after) => isDeepStrictEqual(momentIn(after, id)?.wish, wish),
    };
  },
  'camera light': (moment: LightMoment): Told => {
    const { doc, hand, size } = moment;
    const id = momentId(moment);
    const light =
      size % 2 === 0
        ? ({ use: 'card', powerStops: -5 } as const)
        : ({ use: 'bounce', powerStops: -(size % 8), tiltDeg: -60, facingDeg: size % 360 } as const);
    return {
      outcome: setCameraLight(doc, hand, id, light),
      shows: (after) => isDeepStrictEqual(momentIn(after, id)?.cameraLight, light),
    };
  },
  'test frame': (moment: LightMoment): Told => {
    const { doc, hand, standId, size } = moment;
    const stops = (size % 13) / 3 - 2;
    const outcome = recordTestFrame(doc, hand, frameOf(momentId(moment), standId, stops));
    return {
      outcome,
      shows: ({ frames }) =>
        outcome.ok && frames.some((frame) => frame.id === outcome.frameId && frame.stops === stops),
    };
  },
  'remove frame': ({ doc, hand, night, size }: LightMoment): Told => {
    const id = among(
      night.frames.map((frame) => frame.id),
      size,
    );
    return {
      outcome: removeTestFrame(doc, hand, id),
      shows: (after) => after.frames.every((frame) => frame.id !== id),
    };
  },
  'restore frame': ({ doc, hand, night, size }: LightMoment): Told => {
    const id = among(hidden(doc, 'frames', /^([\w-]+)\/of$/, night.frames), size);
    return {
      outcome: restoreTestFrame(doc, hand, id),
      shows: (after) => after.frames.some((frame) => frame.id === id),
    };
  },
} as const;
