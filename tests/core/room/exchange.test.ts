import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RoomExchange } from '../../../core/light/room/exchange.ts';
import { factorRoom, factorRoomAtOnce } from '../../../core/light/room/factor-room.ts';
import { lightRoom } from '../../../core/light/room/light-room.ts';
import { createSight } from '../../../core/light/room/sight.ts';
import { evenLamp, FULL_HALL, HALL, L_ROOM, roomWithLamp } from './rooms.ts';

/** Slow twin of the response: bounce after bounce, B = ρ(E + F·B), until nothing changes. */
function bounced({ patches, formFactors }: RoomExchange, direct: Float64Array): Float64Array {
  const { count, reflectances } = patches;
  let exitance = new Float64Array(count);
  for (let bounce = 0; bounce < 2000; bounce += 1) {
    const next = direct.map((light, i) => {
      const row = formFactors.subarray(i * count, (i + 1) * count);
      const back = row.reduce((sum, factor, j) => sum + factor * (exitance[j] ?? 0), 0);
      return (reflectances[i] ?? 0) * (light + back);
    });
    const change = next.reduce((most, value, i) => Math.max(most, Math.abs(value - (exitance[i] ?? 0))), 0);
    exitance = next;
    if (change < 1e-12) break;
  }
  return exitance;
}

function worstRow({ patches: { count, areas }, formFactors }: RoomExchange) {
  let [row, reciprocity, least] = [0, 0, 0];
  for (let i = 0; i < count; i += 1) {
    let sum = 0;
    for (let j = 0; j < count; j += 1) {
      const there = formFactors[i * count + j] ?? 0;
      const back = formFactors[j * count + i] ?? 0;
      sum += there;
      least = Math.min(least, there);
      reciprocity = Math.max(reciprocity, Math.abs((areas[i] ?? 0) * there - (areas[j] ?? 0) * back));
    }
    row = Math.max(row, Math.abs(sum - 1));
  }
  return { row, reciprocity, least };
}

/** Identities of a closed room of diffuse surfaces (Siegel and Howell, net-radiation method; from memory). */
describe('form factors of a room', () => {
  it('rows sum to 1, A·F is the same both ways, none is below zero, in any room', () => {
    fc.assert(
      fc.property(roomWithLamp, ({ room }) => {
        const { row, reciprocity, least } = worstRow(factorRoomAtOnce(room, { mostPatches: 150 }));
        expect(row).toBeLessThan(1e-12);
        expect(reciprocity).toBeLessThan(1e-12);
        expect(least).toBe(0);
      }),
      { numRuns: 25, endOnFailure: true },
    );
  });

  it('what the scaling leaves to a patch itself is next to nothing where all patches see the room', () => {
    for (const room of [HALL, FULL_HALL, L_ROOM]) {
      const { patches, formFactors } = factorRoomAtOnce(room, { mostPatches: 300 });
      const own = patches.areas.map((_, i) => formFactors[i * patches.count + i] ?? 1);
      expect(Math.max(...own)).toBeLessThan(1e-5);
    }
  });

  it('the response is what bouncing light to and fro comes to', () => {
    fc.assert(
      fc.property(roomWithLamp, ({ room, at }) => {
        const exchange = factorRoomAtOnce(room, { mostPatches: 100 });
        const light = lightRoom(exchange, createSight(room), evenLamp(at));
        const slow = bounced(exchange, light.direct);
        const most = Math.max(1e-9, ...slow);
        for (const [i, value] of slow.entries()) {
          expect(Math.abs(value - (light.exitance[i] ?? 0)) / most).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 15, endOnFailure: true },
    );
  });

  it('black surfaces send out nothing, and what returns to them is still known', () => {
    const room = { ...HALL, finishes: { ceiling: 0.8, walls: 0, floor: 0 } };
    const exchange = factorRoomAtOnce(room, { mostPatches: 200 });
    const { exitance, returned } = lightRoom(exchange, createSight(room), evenLamp({ x: 5, y: 5, z: 2 }));
    for (const [i, surface] of exchange.patches.surfaces.entries()) {
      if (surface.kind !== 'ceiling') expect(exitance[i]).toBe(0);
      if (surface.kind === 'floor') expect(returned[i]).toBeGreaterThan(0);
    }
  });

  it('tells how far it is, upward from 0 to 1, and often', () => {
    const shares = [...factorRoom(FULL_HALL)];
    expect(shares.length).toBeGreaterThan(60);
    expect(shares.every((share, k) => share >= (shares[k - 1] ?? 0) && share <= 1)).toBe(true);
  });

  it('the demo hall has 500 to 750 patches; small, huge and full rooms stay under 750 too', () => {
    const counts = [HALL, FULL_HALL, L_ROOM, big(200), big(5)].map(
      (room) => factorRoomAtOnce(room).patches.count,
    );
    expect(Math.max(...counts)).toBeLessThanOrEqual(750);
    expect(counts[0]).toBeGreaterThanOrEqual(500);
  });
});

function big(lengthM: number) {
  const outline = HALL.outline.map(({ x, y }) => ({ x: (x * lengthM) / 18, y: (y * lengthM) / 18 }));
  return { ...HALL, outline };
}
