import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { wayOf } from '../../client/screens/assistant/way.ts';
import { demoNight } from '../../server/nights/demo-night.ts';
import { callCarry } from '../../shared/document/commands/call-carry.ts';
import { createNight } from '../../shared/document/create-night.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import type { NightId } from '../../shared/ids.ts';

function callTo(spot: { x: number; y: number }) {
  const doc = new Y.Doc();
  let count = 0;
  const hand = { person: 'lead', now: () => 1000, newId: () => `id-${count++}` };
  createNight(doc, hand, 'night' as NightId, demoNight('2026-05-16'));
  const [stand] = readNight(doc).stands;
  if (!stand) throw new Error('no stand');
  callCarry(doc, hand, { standId: stand.id, mark: { ...stand.place.mark, spot } });
  const night = readNight(doc);
  const [carry] = night.carries;
  if (!carry) throw new Error('no carry');
  return { night, asked: { carry, stand }, from: stand.place.mark.spot };
}

const spots = fc.record({
  x: fc.double({ min: 0.4, max: 17.6, noNaN: true }),
  y: fc.double({ min: 0.4, max: 11.6, noNaN: true }),
});

describe('the way on the carry card', () => {
  it('[ASSIST1] following the arrow from what one faces, over the distance shown, ends at the mark', () => {
    fc.assert(
      fc.property(spots, fc.constantFrom('couple', 'bar', 'band', 'foyer', 'garden'), (spot, facing) => {
        const { night, asked, from } = callTo(spot);
        const way = wayOf(night, asked, facing, 0.65);
        fc.pre(way.turnDeg !== null);
        const bearing = ((way.headingDeg + (way.turnDeg ?? 0)) * Math.PI) / 180;
        const end = {
          x: from.x + Math.sin(bearing) * way.distanceM,
          y: from.y - Math.cos(bearing) * way.distanceM,
        };
        expect(Math.hypot(end.x - spot.x, end.y - spot.y)).toBeLessThan(1e-6);
      }),
      { numRuns: 60 },
    );
  });

  it('[ASSIST1] the number under the arrow is the distance, to its rounding', () => {
    fc.assert(
      fc.property(spots, (spot) => {
        const { night, asked, from } = callTo(spot);
        const way = wayOf(night, asked, 'couple', 0.65);
        const metres = /^([\d.]+) m$/.exec(way.distance.main)?.[1];
        fc.pre(metres !== undefined);
        const straightM = Math.hypot(spot.x - from.x, spot.y - from.y);
        // Half a metre is the rounding of a long way; a spoken distance may be another quarter off.
        expect(Math.abs(Number(metres) - straightM)).toBeLessThanOrEqual(0.51);
      }),
      { numRuns: 60 },
    );
  });

  it('[ASSIST1] a mark where the stand is asks nobody to walk', () => {
    const { night, asked } = callTo({ x: 12.9, y: 9.1 });
    const way = wayOf(night, asked, 'couple', 0.65);
    expect(way.turnDeg).toBeNull();
    expect(way.sentence).toBe('K stays where it is');
  });
});
