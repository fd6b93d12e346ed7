import { describe, expect, it } from 'vitest';
import {
  measureAmbient,
  removeAmbient,
  restoreAmbient,
} from '../../shared/document/commands/ambient-reading.ts';
import { setCameraKit, setGear } from '../../shared/document/commands/change-gear.ts';
import { setCameraLight, setView, setWish } from '../../shared/document/commands/change-moment.ts';
import { setCeiling, setFinishes, setRoof } from '../../shared/document/commands/change-room.ts';
import {
  recordTestFrame,
  removeTestFrame,
  restoreTestFrame,
} from '../../shared/document/commands/test-frame.ts';
import { createNight } from '../../shared/document/create-night.ts';
import { rootOf } from '../../shared/document/roots.ts';
import type { GearItem } from '../../shared/document/schema.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import { asId, type GearId } from '../../shared/ids.ts';
import { frameOf } from '../support/document-commands.ts';
import { demoDocument, done, phonePair, refusal, standOf } from '../support/document-night.ts';
import { valuesOf } from '../support/document-values.ts';
import { HeldClock, heldHand } from '../support/phone-hand.ts';
import { openDoc } from '../support/phone-network.ts';
import { smallNight } from '../support/server-seed.ts';

const gearOf = (doc: ReturnType<typeof openDoc>, id: string): GearItem => {
  const item = readNight(doc).gear.get(asId<GearId>(id));
  if (!item) throw new Error(`no gear ${id}`);
  return item;
};

describe('test frames', () => {
  it('[DOC15] a frame holds what was set and what came out, whatever is moved afterwards', () => {
    const { doc, lead, clock } = demoDocument();
    const taken = frameOf('toasts', 'key', 2 / 3);
    const { frameId } = done(recordTestFrame(doc, lead, taken));
    const [frame] = readNight(doc).frames;
    expect(frame).toEqual({ ...taken, id: frameId, by: 'lead', at: clock.nowMs });
    const view = readNight(doc).moments.find(({ id }) => id === 'toasts')?.view;
    if (!view) throw new Error('the demo night has toasts');
    done(setView(doc, lead, 'toasts', { ...view, camera: { spot: { x: 1, y: 1 }, heightM: 2 } }));
    expect(readNight(doc).frames).toEqual([frame]);
  });

  it('[DOC15] frames are read in the order in which they were taken', () => {
    const { doc, lead, assistant, clock } = demoDocument();
    const stops = [0.5, -1, 2, 0];
    for (const [index, over] of stops.entries()) {
      clock.pass(500);
      done(recordTestFrame(doc, index % 2 ? assistant : lead, frameOf('toasts', 'back', over)));
    }
    expect(readNight(doc).frames.map((frame) => frame.stops)).toEqual(stops);
  });

  it('[DOC15] two phones that were apart each took one: both are there on both', () => {
    for (const assistantWinsTies of [true, false]) {
      const { network, lead, assistant } = phonePair({ assistantWinsTies });
      network.cut(lead.phone);
      network.cut(assistant.phone);
      const first = done(recordTestFrame(lead.doc, lead.hand, frameOf('toasts', 'key', 1)));
      const second = done(recordTestFrame(assistant.doc, assistant.hand, frameOf('toasts', 'back', -1)));
      network.joinAllAndDrain();
      const ids = [first.frameId, second.frameId].sort();
      for (const doc of network.docs)
        expect(
          readNight(doc)
            .frames.map(({ id }) => id)
            .sort(),
        ).toEqual(ids);
    }
  });

  it('[DOC15] a frame of the ambient alone and one of the flash on the camera are frames too', () => {
    const { doc, lead, clock } = demoDocument();
    const { lights, ...rest } = frameOf('toasts', 'key', 0);
    done(recordTestFrame(doc, lead, { ...rest, lights: [], ambientEv100: null }));
    clock.pass(1000);
    const mark = { ...(lights[0]?.mark ?? standOf(doc, 'key').place.mark), tiltDeg: -60 };
    const camera = {
      on: 'camera',
      use: 'bounce',
      flashGear: 'flash-1',
      cardGear: null,
      mark,
    } as const;
    done(recordTestFrame(doc, lead, { ...rest, lights: [...lights, camera] }));
    expect(readNight(doc).frames.map((frame) => frame.lights.map(({ on }) => on))).toEqual([
      [],
      ['stand', 'camera'],
    ]);
  });

  it('[DOC15] a frame of a moment or stand that is not in the night is refused', () => {
    const { doc, lead } = demoDocument();
    expect(refusal(recordTestFrame(doc, lead, frameOf('brunch', 'key', 0)))).toBe('no-such-moment');
    expect(refusal(recordTestFrame(doc, lead, frameOf('toasts', 'hair', 0)))).toBe('no-such-stand');
    expect(readNight(doc).frames).toEqual([]);
  });

  it('[DOC16] removing takes a frame out, the document keeps it, and undo brings back the same', () => {
    const { doc, lead, assistant } = demoDocument();
    const { frameId } = done(recordTestFrame(doc, lead, frameOf('toasts', 'key', 1)));
    done(recordTestFrame(doc, lead, frameOf('toasts', 'back', 0)));
    const before = readNight(doc).frames;
    done(removeTestFrame(doc, assistant, frameId));
    expect(readNight(doc).frames).toEqual(before.filter(({ id }) => id !== frameId));
    expect(valuesOf(doc).frames?.[`${frameId}/of`]).toMatchObject({ stops: 1 });
    expect(refusal(removeTestFrame(doc, lead, frameId))).toBe('already');
    done(restoreTestFrame(doc, lead, frameId));
    expect(readNight(doc).frames).toEqual(before);
    expect(refusal(restoreTestFrame(doc, lead, frameId))).toBe('nothing-to-undo');
    done(removeTestFrame(doc, lead, frameId));
    expect(readNight(doc).frames).toHaveLength(1);
  });
});

describe('ambient readings', () => {
  it('[DOC16] each is put beside the others; a removed one counts again when that is undone', () => {
    const { doc, lead, assistant, clock } = demoDocument();
    const one = done(measureAmbient(doc, lead, { x: 3, y: 4 }, 3.7));
    clock.pass(100);
    done(measureAmbient(doc, assistant, { x: 3, y: 4 }, 5));
    // The demo night begins with readings of its own.
    const own = () => readNight(doc).ambientSpots.filter(({ by }) => by !== 'server');
    const both = own();
    expect(both.map(({ spot, ev100, by }) => ({ spot, ev100, by }))).toEqual([
      { spot: { x: 3, y: 4 }, ev100: 3.7, by: 'lead' },
      { spot: { x: 3, y: 4 }, ev100: 5, by: 'assistant' },
    ]);
    done(removeAmbient(doc, assistant, one.readingId));
    expect(own().map(({ ev100 }) => ev100)).toEqual([5]);
    expect(refusal(removeAmbient(doc, lead, one.readingId))).toBe('already');
    done(restoreAmbient(doc, lead, one.readingId));
    expect(own()).toEqual(both);
    expect(refusal(restoreAmbient(doc, lead, one.readingId))).toBe('nothing-to-undo');
    expect(readNight(doc).ambientEv100).toBe(4);
  });
});

describe('what nobody has said', () => {
  it('[DOC17] a night from before roofs, finishes and wishes is read with stated values', () => {
    const doc = openDoc(3);
    createNight(doc, heldHand('server', new HeldClock(), { idSeed: 1 }), asId('barn'), smallNight());
    expect(readNight(doc)).toMatchObject({
      roof: { kind: 'flat' },
      finishes: { ceiling: 0.7, walls: 0.5, floor: 0.2 },
      ambientSpots: [],
      frames: [],
      cameraKit: null,
      skipped: [],
    });
    expect(readNight(doc).moment).toMatchObject({
      wish: { subjectStops: 0, backgroundStops: -1.5, rimStops: 1, groupWidthM: 1.2 },
      cameraLight: { use: 'off' },
    });
  });

  it('[DOC17] the demo night says what its hall is made of and what is on the camera', () => {
    const { doc } = demoDocument();
    const { finishes, cameraKit, gear } = readNight(doc);
    expect(finishes).toMatchObject({ ceiling: 0.8, walls: 0.5, floor: 0.3 });
    expect(gear.get(asId(cameraKit?.flashGear ?? ''))).toMatchObject({ kind: 'flash', guideNumberM: 36 });
    expect(gear.get(asId(cameraKit?.cardGear ?? ''))?.kind).toBe('card');
  });
});

describe('values of the light', () => {
  it('[DOC18] one out of range is refused with its field, and nothing changes', () => {
    const { doc, lead } = demoDocument();
    const head = gearOf(doc, 'head-k') as Extract<GearItem, { kind: 'head' }>;
    const umbrella = gearOf(doc, 'umbrella-1') as Extract<GearItem, { kind: 'umbrella' }>;
    const wish = { subjectStops: 0, backgroundStops: -2, rimStops: 0, groupWidthM: 1 };
    const frame = frameOf('toasts', 'key', 0);
    const before = valuesOf(doc);
    const asked = [
      [setRoof(doc, lead, { kind: 'ridge', peakM: 1, ridgeDeg: 0 }), 'peakM'],
      [setFinishes(doc, lead, { ceiling: 1, walls: 0.5, floor: 0.2 }), 'ceiling'],
      [setFinishes(doc, lead, { ceiling: 0.5, walls: 0.5, floor: -0.1 }), 'floor'],
      [setCeiling(doc, lead, 0), 'ceilingM'],
      [measureAmbient(doc, lead, { x: 1, y: 9e9 }, 3), 'spot.y'],
      [measureAmbient(doc, lead, { x: 1, y: 1 }, 40), 'ev100'],
      [setGear(doc, lead, 'umbrella-1', { ...umbrella, lossStops: 7 }), 'lossStops'],
      [setGear(doc, lead, 'head-k', { ...head, guideNumberM: 0 }), 'guideNumberM'],
      [setGear(doc, lead, 'head-k', { ...head, recycleS: -1 }), 'recycleS'],
      [setWish(doc, lead, 'toasts', { ...wish, groupWidthM: 0 }), 'groupWidthM'],
      [setCameraLight(doc, lead, 'toasts', { use: 'card', powerStops: 1 }), 'powerStops'],
      [recordTestFrame(doc, lead, { ...frame, stops: 30 }), 'stops'],
      [recordTestFrame(doc, lead, { ...frame, exposure: { ...frame.exposure, iso: 1e9 } }), 'exposure.iso'],
    ] as const;
    for (const [outcome, field] of asked)
      expect(outcome).toEqual({ ok: false, reason: 'out-of-range', field });
    expect(valuesOf(doc)).toEqual(before);
  });

  it('[DOC18] giving the former item is the undo of a change of gear, whatever the change added', () => {
    const { doc, lead } = demoDocument();
    for (const [id, change] of [
      ['umbrella-1', { lossStops: 2.1, backFraction: 0.3 }],
      ['head-k', { guideNumberKind: 'open', guideNumberM: 30 }],
    ] as const) {
      const before = gearOf(doc, id);
      done(setGear(doc, lead, id, { ...before, ...change } as GearItem));
      expect(gearOf(doc, id)).toEqual({ ...before, ...change });
      done(setGear(doc, lead, id, before));
      expect(gearOf(doc, id)).toEqual(before);
      expect(rootOf(doc, 'gear').get(id)).toEqual(before);
    }
  });

  it('[DOC18] names, peaks and angles that the new value lacks are gone', () => {
    const { doc, lead } = demoDocument();
    done(setFinishes(doc, lead, { ceiling: 0.1, walls: 0.1, floor: 0.1 }));
    expect(readNight(doc).finishes).toEqual({ ceiling: 0.1, walls: 0.1, floor: 0.1 });
    done(setRoof(doc, lead, { kind: 'pyramid', peakM: 7 }));
    done(setRoof(doc, lead, { kind: 'flat' }));
    expect(rootOf(doc, 'room').get('roof')).toEqual({ kind: 'flat' });
    done(setCameraLight(doc, lead, 'toasts', { use: 'bounce', powerStops: -2, tiltDeg: -70, facingDeg: 10 }));
    done(setCameraLight(doc, lead, 'toasts', { use: 'direct', powerStops: -2 }));
    expect(readNight(doc).moments.find(({ id }) => id === 'toasts')?.cameraLight).toEqual({
      use: 'direct',
      powerStops: -2,
    });
  });

  it('[DOC10] fields that this version does not know stay through a whole replacement', () => {
    const { doc, lead } = demoDocument();
    const before = gearOf(doc, 'card-1');
    rootOf(doc, 'gear').set('card-1', { ...before, tint: 'warm' });
    done(setGear(doc, lead, 'card-1', { ...before, name: 'Card' } as GearItem));
    expect(rootOf(doc, 'gear').get('card-1')).toEqual({ ...before, name: 'Card', tint: 'warm' });
  });

  it('[DOC18] gear can be added and keeps its kind; only a flash and a card go on the camera', () => {
    const { doc, lead } = demoDocument();
    const head = gearOf(doc, 'head-k');
    done(setGear(doc, lead, 'spare', head));
    expect(gearOf(doc, 'spare')).toEqual(head);
    expect(setGear(doc, lead, 'card-1', head)).toEqual({ ok: false, reason: 'out-of-range', field: 'kind' });
    for (const id of ['', 'a/b', '../x'])
      expect(refusal(setGear(doc, lead, id, head)), id).toBe('no-such-gear');
    expect(refusal(setCameraKit(doc, lead, { flashGear: 'head-k', cardGear: null }))).toBe('no-such-gear');
    expect(refusal(setCameraKit(doc, lead, { flashGear: 'flash-1', cardGear: 'head-k' }))).toBe(
      'no-such-gear',
    );
    done(setCameraKit(doc, lead, { flashGear: 'flash-1', cardGear: null }));
    expect(readNight(doc).cameraKit).toEqual({ flashGear: 'flash-1', cardGear: null });
  });

  it('[DOC6] the ceiling of a night without a room is refused', () => {
    const doc = openDoc(3);
    expect(refusal(setCeiling(doc, heldHand('lead', new HeldClock(), { idSeed: 2 }), 4))).toBe(
      'no-such-room',
    );
  });
});
