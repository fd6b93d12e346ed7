import type * as Y from 'yjs';
import {
  measureAmbient,
  removeAmbient,
  restoreAmbient,
} from '../../shared/document/commands/ambient-reading.ts';
import { callCarry } from '../../shared/document/commands/call-carry.ts';
import { setCameraKit, setGear } from '../../shared/document/commands/change-gear.ts';
import {
  setAmbient,
  setCameraLight,
  setExposure,
  setView,
  setWish,
  startMoment,
} from '../../shared/document/commands/change-moment.ts';
import { setCeiling, setFinishes, setRoof } from '../../shared/document/commands/change-room.ts';
import { enterNight, setUnits } from '../../shared/document/commands/enter-night.ts';
import { markSet, markSetElsewhere, undoStamp } from '../../shared/document/commands/mark-set.ts';
import { nudgeCarry } from '../../shared/document/commands/nudge-carry.ts';
import {
  cannotCarry,
  holdCall,
  releaseCall,
  type StampOn,
  stampDelivered,
  stampHeard,
  stampSeen,
  startCarrying,
} from '../../shared/document/commands/stamp-carry.ts';
import {
  recordTestFrame,
  removeTestFrame,
  restoreTestFrame,
} from '../../shared/document/commands/test-frame.ts';
import {
  acknowledgeWithdrawal,
  restoreCarry,
  withdrawCarry,
} from '../../shared/document/commands/withdraw-carry.ts';
import type { Outcome } from '../../shared/document/outcome.ts';
import type { Units } from '../../shared/document/schema.ts';
import type { Hand } from '../../shared/document/transact.ts';
import { MOMENT_COMMANDS } from './document-moment-commands.ts';
import { PLAN_COMMANDS } from './document-plan-commands.ts';

/** Everything a command can be asked with, so that one test can ask every command the same thing. */
export interface Asking {
  readonly standId: string;
  readonly momentId: string;
  readonly on: StampOn;
  readonly frameId: string;
  readonly readingId: string;
  readonly featureId: string;
  readonly announcementId: string;
  readonly text: string;
  /** Put wherever a command takes a number, or times the usual value: 1 is what every command accepts. */
  readonly number: number;
}

type FrameTaken = Parameters<typeof recordTestFrame>[2];
type Command = (doc: Y.Doc, hand: Hand, asking: Asking) => Outcome<object>;

const mark = (number: number) => ({
  spot: { x: number, y: number },
  heightM: number,
  facingDeg: number,
  tiltDeg: number,
  powerStops: -Math.abs(number),
});

/** A test frame of the key alone that came out so many stops over. */
export const frameOf = (momentId: string, standId: string, stops: number): FrameTaken => ({
  momentId,
  lights: [
    {
      on: 'stand',
      standId,
      job: 'key',
      headGear: 'head-k',
      umbrellaGear: 'umbrella-1',
      mark: { spot: { x: 12, y: 9 }, heightM: 2.3, facingDeg: 310, tiltDeg: 15, powerStops: -6 },
    },
  ],
  spot: { x: 9, y: 6 },
  eyeM: 1.6,
  camera: { spot: { x: 9, y: 10 }, heightM: 1.6 },
  exposure: { iso: 1600, fNumber: 2, shutterS: 1 / 160 },
  ambientEv100: 4,
  source: 'seen',
  stops,
  what: 'subject',
});

/**
 * Every command of the night document by the name it is exported under; a test compares the list with the folder.
 */
export const COMMANDS: Readonly<Record<string, Command>> = {
  callCarry: (doc, hand, { standId, number }) => callCarry(doc, hand, { standId, mark: mark(number) }),
  nudgeCarry: (doc, hand, { standId, number }) =>
    nudgeCarry(doc, hand, { standId, nudge: { kind: 'move', way: 'camera-left', byM: number } }),
  withdrawCarry: (doc, hand, { on }) => withdrawCarry(doc, hand, on.carryId),
  restoreCarry: (doc, hand, { on }) => restoreCarry(doc, hand, on.carryId),
  acknowledgeWithdrawal: (doc, hand, { on }) => acknowledgeWithdrawal(doc, hand, on.carryId),
  stampDelivered: (doc, hand, { on }) => stampDelivered(doc, hand, on),
  stampSeen: (doc, hand, { on, number }) => stampSeen(doc, hand, on, mark(number)),
  stampHeard: (doc, hand, { on }) => stampHeard(doc, hand, on),
  holdCall: (doc, hand, { on }) => holdCall(doc, hand, on),
  releaseCall: (doc, hand, { on }) => releaseCall(doc, hand, on),
  startCarrying: (doc, hand, { on }) => startCarrying(doc, hand, on),
  cannotCarry: (doc, hand, { on, text }) => cannotCarry(doc, hand, on, text),
  markSet: (doc, hand, { on, number }) => markSet(doc, hand, on, mark(number)),
  markSetElsewhere: (doc, hand, { on, number, text }) =>
    markSetElsewhere(doc, hand, { ...on, mark: mark(number), note: text }),
  undoStamp: (doc, hand, { on }) => undoStamp(doc, hand, on, 'set'),
  startMoment: (doc, hand, { momentId }) => startMoment(doc, hand, momentId),
  setExposure: (doc, hand, { momentId, number }) =>
    setExposure(doc, hand, momentId, { iso: 100 * number, fNumber: 2 * number, shutterS: number / 60 }),
  setView: (doc, hand, { momentId, number, text }) =>
    setView(doc, hand, momentId, {
      subject: { spot: { x: number, y: number }, facingDeg: number, eyeM: number, name: text },
      camera: { spot: { x: number, y: number }, heightM: number },
      frame: {
        focalMm: 35 * number,
        sensorWidthMm: 36 * number,
        sensorHeightMm: 24 * number,
        upright: false,
      },
    }),
  setAmbient: (doc, hand, { number }) => setAmbient(doc, hand, number),
  enterNight: (doc, hand, { text, number }) =>
    enterNight(doc, hand, { name: text, role: 'assistant', stepM: number }),
  setRoof: (doc, hand, { number }) =>
    setRoof(doc, hand, { kind: 'ridge', peakM: 6 * number, ridgeDeg: number }),
  setFinishes: (doc, hand, { number }) =>
    setFinishes(doc, hand, { ceiling: 0.8 * number, walls: 0.4 * number, floor: 0.3 }),
  setCeiling: (doc, hand, { number }) => setCeiling(doc, hand, 3 * number),
  measureAmbient: (doc, hand, { number }) => measureAmbient(doc, hand, { x: number, y: 3 }, 4 * number),
  removeAmbient: (doc, hand, { readingId }) => removeAmbient(doc, hand, readingId),
  restoreAmbient: (doc, hand, { readingId }) => restoreAmbient(doc, hand, readingId),
  setGear: (doc, hand, { number, text }) =>
    setGear(doc, hand, 'card-1', {
      kind: 'card',
      name: text,
      widthM: 0.2 * number,
      lossStops: 2 * number,
      upFraction: 0.4,
    }),
  setCameraKit: (doc, hand, { text }) =>
    setCameraKit(doc, hand, { flashGear: text === 'Robin' ? 'flash-1' : text, cardGear: null }),
  setWish: (doc, hand, { momentId, number }) =>
    setWish(doc, hand, momentId, {
      subjectStops: number / 3,
      backgroundStops: -number,
      rimStops: number,
      groupWidthM: 2 * number,
    }),
  setCameraLight: (doc, hand, { momentId, number }) =>
    setCameraLight(doc, hand, momentId, {
      use: 'bounce',
      powerStops: -Math.abs(number),
      tiltDeg: -60 * number,
    }),
  recordTestFrame: (doc, hand, { momentId, standId, number }) =>
    recordTestFrame(doc, hand, frameOf(momentId, standId, number)),
  removeTestFrame: (doc, hand, { frameId }) => removeTestFrame(doc, hand, frameId),
  restoreTestFrame: (doc, hand, { frameId }) => restoreTestFrame(doc, hand, frameId),
  ...PLAN_COMMANDS,
  ...MOMENT_COMMANDS,
  // A screen's choice arrives as text: the type is what the caller says, not what the document trusts.
  setUnits: (doc, hand, { text }) => setUnits(doc, hand, text as Units),
};
