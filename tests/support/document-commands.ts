import type * as Y from 'yjs';
import { callCarry } from '../../shared/document/commands/call-carry.ts';
import {
  setAmbient,
  setExposure,
  setView,
  startMoment,
} from '../../shared/document/commands/change-moment.ts';
import { enterNight, setUnits } from '../../shared/document/commands/enter-night.ts';
import { markSet, undoStamp } from '../../shared/document/commands/mark-set.ts';
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
  acknowledgeWithdrawal,
  restoreCarry,
  withdrawCarry,
} from '../../shared/document/commands/withdraw-carry.ts';
import type { Outcome } from '../../shared/document/outcome.ts';
import type { Units } from '../../shared/document/schema.ts';
import type { Hand } from '../../shared/document/transact.ts';

/** Everything a command can be asked with, so that one test can ask every command the same thing. */
export interface Asking {
  readonly standId: string;
  readonly momentId: string;
  readonly on: StampOn;
  readonly text: string;
  /** Put wherever a command takes a number, or times the usual value: 1 is what every command accepts. */
  readonly number: number;
}

type Command = (doc: Y.Doc, hand: Hand, asking: Asking) => Outcome<object>;

const mark = (number: number) => ({
  spot: { x: number, y: number },
  heightM: number,
  facingDeg: number,
  tiltDeg: number,
  powerStops: -Math.abs(number),
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
  // A screen's choice arrives as text: the type is what the caller says, not what the document trusts.
  setUnits: (doc, hand, { text }) => setUnits(doc, hand, text as Units),
};
