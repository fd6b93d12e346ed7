import { describe, expect, it } from 'vitest';
import type { RoomModel } from '../../../core/light/room/room-model.ts';
import { lampProblem, type RoomProblem, roomProblem } from '../../../core/light/room/room-problem.ts';
import { FULL_HALL, HALL, L_ROOM, pillar, rectangle } from './rooms.ts';

const bad = (change: Partial<RoomModel>): RoomModel => ({ ...HALL, ...change });
const withBlocker = (change: object): RoomModel =>
  bad({ blockers: [{ ...pillar('a', { x: 5, y: 5 }, 1, 3), ...change }] });
const finishes = (change: object) => bad({ finishes: { ...HALL.finishes, ...change } });
const crossing = [
  { x: 0, y: 0 },
  { x: 9, y: 9 },
  { x: 9, y: 0 },
  { x: 0, y: 8 },
];

const CASES: [string, RoomModel, RoomProblem['field'], string][] = [
  ['two corners', bad({ outline: rectangle(5, 5).slice(0, 2) }), 'outline', '2 corners'],
  ['no area', bad({ outline: rectangle(5, 0) }), 'outline', 'no area'],
  ['crossing itself', bad({ outline: crossing }), 'outline', 'crosses itself'],
  ['far too long', bad({ outline: rectangle(400, 5) }), 'outline', '400 m'],
  ['a corner nowhere', bad({ outline: [{ x: Number.NaN, y: 0 }, ...rectangle(5, 5)] }), 'outline', 'nowhere'],
  ['as small as a cupboard', bad({ outline: rectangle(0.5, 0.5) }), 'outline', '0.25 m²'],
  ['walls of no height', bad({ ceilingM: 0 }), 'ceilingM', '0 m'],
  ['walls of 61 m', bad({ ceilingM: 61 }), 'ceilingM', '61 m'],
  ['walls of unknown height', bad({ ceilingM: Number.NaN }), 'ceilingM', 'not a number'],
  ['a peak under the walls', bad({ roof: { kind: 'ridge', peakM: 4, ridgeDeg: 0 } }), 'roof', '4 m'],
  ['one peak over an L', { ...L_ROOM, roof: { kind: 'pyramid', peakM: 6 } }, 'roof', 'inward'],
  [
    'a ridge without bearing',
    bad({ roof: { kind: 'ridge', peakM: 6, ridgeDeg: Number.NaN } }),
    'roof',
    'bearing',
  ],
  ['a ceiling that adds light', finishes({ ceiling: 1 }), 'ceiling', '1;'],
  ['walls below black', finishes({ walls: -0.1 }), 'walls', '-0.1'],
  ['a floor of nothing', finishes({ floor: Number.NaN }), 'floor', 'not a number'],
  ['a thing without height', withBlocker({ heightM: 0 }), 'blocker', '0 m'],
  ['a thing that crosses itself', withBlocker({ outline: crossing }), 'blocker', 'crosses itself'],
  ['a thing that adds light', withBlocker({ reflectance: 1.2 }), 'blocker', '1.2'],
  [
    'a thing that fills the room',
    withBlocker({ outline: rectangle(30, 30, { x: -5, y: -5 }) }),
    'blocker',
    'fills',
  ],
];

describe('rooms that cannot be lit', () => {
  it.each(CASES)('%s', (_, room, field, words) => {
    const problem = roomProblem(room);
    expect(problem?.field).toBe(field);
    expect(problem?.reason).toContain(words);
    expect(problem?.id).toBe(field === 'blocker' ? 'a' : null);
  });

  it('has nothing against rooms that can, nor against a thing that reaches outside', () => {
    const ridge: RoomModel = { ...L_ROOM, roof: { kind: 'ridge', peakM: 6, ridgeDeg: 20 } };
    const outside = bad({ blockers: [pillar('a', { x: 0, y: 6 }, 2, 3)] });
    for (const room of [HALL, FULL_HALL, L_ROOM, ridge, outside]) expect(roomProblem(room)).toBeNull();
  });
});

describe('places where a lamp cannot be', () => {
  it.each([
    [{ x: -1, y: 5, z: 2 }, 'outside'],
    [{ x: 5, y: 5, z: 4.3 }, 'the roof there is at 4.2 m'],
    [{ x: 5, y: 5, z: -0.2 }, '-0.2 m'],
    [{ x: 4, y: 4, z: 2 }, 'inside Pillar a'],
    [{ x: Number.NaN, y: 4, z: 2 }, 'not a number'],
  ])('%o', (at, words) => {
    expect(lampProblem(FULL_HALL, at)).toContain(words);
  });

  it('may be over a low thing, beside a tall one, or high under a tent', () => {
    expect(lampProblem(FULL_HALL, { x: 9, y: 11.5, z: 2.5 })).toBeNull();
    expect(lampProblem(FULL_HALL, { x: 4.4, y: 4, z: 2 })).toBeNull();
    const tent: RoomModel = { ...HALL, roof: { kind: 'pyramid', peakM: 8 } };
    expect(lampProblem(tent, { x: 9, y: 6, z: 7 })).toBeNull();
    expect(lampProblem(tent, { x: 1, y: 6, z: 7 })).toContain('roof');
  });
});
