import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { removeFeatures } from '../../shared/document/commands/change-plan.ts';
import { createNight } from '../../shared/document/create-night.ts';
import { readNight } from '../../shared/document/snapshot.ts';
import { asId } from '../../shared/ids.ts';
import { parseVenue, useVenue, type VenueFile, venueOf } from '../../shared/venue/venue-file.ts';
import { demoDocument, done, refusal } from '../support/document-night.ts';
import { valuesOf } from '../support/document-values.ts';
import { HeldClock, heldHand } from '../support/phone-hand.ts';
import { openDoc } from '../support/phone-network.ts';
import { boxOutline, CROSSING, tableAt } from '../support/plan-features.ts';
import { smallNight } from '../support/server-seed.ts';

function venue(): VenueFile {
  const saved = venueOf(readNight(demoDocument().doc), 'The old mill', 1_780_000_000_000);
  if (!saved.ok) throw new Error(saved.reason);
  return saved.venue;
}
const reasonOf = (input: unknown): string => {
  const read = parseVenue(input);
  return read.ok ? 'it was read' : read.reason;
};

const metres = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true, noDefaultInfinity: true }).map((value) => value + 0);
const spots = fc.record({ x: metres(-400, 400), y: metres(-400, 400) });
const features = fc.dictionary(
  fc.stringMatching(/^[A-Za-z0-9_-]{1,64}$/).filter((id) => id !== '__proto__'),
  fc.record({
    kind: fc.constantFrom('table' as const, 'bar' as const, 'exit' as const),
    name: fc.string({ minLength: 1, maxLength: 80, unit: 'grapheme' }).filter(({ length }) => length <= 80),
    at: spots,
    turnDeg: metres(-360, 360),
    shape: fc.oneof(
      fc.record({ kind: fc.constant('round' as const), radiusM: metres(0.01, 100) }),
      fc.record({
        kind: fc.constant('box' as const),
        widthM: metres(0.01, 200),
        depthM: metres(0.01, 200),
      }),
      fc.record({ kind: fc.constant('outline' as const), points: fc.constant(boxOutline(2, 1)) }),
    ),
    heightM: metres(0, 60),
    blocksLight: fc.boolean(),
    blocksWalking: fc.boolean(),
    chairs: fc.boolean(),
    background: fc.constantFrom('wanted' as const, 'unwanted' as const, 'neither' as const),
  }),
  { maxKeys: 20 },
);
const venues: fc.Arbitrary<VenueFile> = fc.record({
  format: fc.constant('hushmark-venue' as const),
  version: fc.constant(1 as const),
  name: fc.string({ minLength: 1, maxLength: 80 }),
  savedAt: fc.nat(),
  room: fc.record({
    outline: fc.tuple(metres(1, 200), metres(1, 200)).map(([width, depth]) => boxOutline(width, depth)),
    ceilingM: metres(1.5, 60),
  }),
  roof: fc.oneof(
    fc.constant({ kind: 'flat' as const }),
    fc.record({ kind: fc.constant('ridge' as const), peakM: metres(1.5, 80), ridgeDeg: metres(-360, 360) }),
  ),
  finishes: fc.record(
    {
      ceiling: metres(0, 0.95),
      walls: metres(0, 0.95),
      floor: metres(0, 0.95),
      wallsName: fc.constant('Drapes'),
    },
    { requiredKeys: ['ceiling', 'walls', 'floor'] },
  ),
  features,
});

describe('a venue', () => {
  it('[VEN1] is what the night shows of its room and plan', () => {
    const night = readNight(demoDocument().doc);
    const saved = venue();
    expect(saved).toMatchObject({ format: 'hushmark-venue', version: 1, name: 'The old mill' });
    expect([saved.room, saved.roof, saved.finishes]).toEqual([night.room, night.roof, night.finishes]);
    expect(Object.entries(saved.features).map(([id, feature]) => ({ ...feature, id }))).toEqual(
      night.features,
    );
  });

  it('[VEN1] saved and read again is equal, through a file and through a night that had another room', () => {
    fc.assert(
      fc.property(venues, (saved) => {
        expect(parseVenue(JSON.stringify(saved))).toEqual({ ok: true, venue: saved });
        const doc = openDoc(3);
        const hand = heldHand('lead', new HeldClock(), { idSeed: 5 });
        createNight(doc, hand, asId('small'), smallNight());
        done(useVenue(doc, hand, saved));
        const again = venueOf(readNight(doc), saved.name, saved.savedAt);
        expect(again).toEqual({ ok: true, venue: saved });
      }),
      { numRuns: 60 },
    );
  });

  it('[VEN2] a file that is none is refused in words that say why', () => {
    const text = JSON.stringify(venue());
    expect(reasonOf(text.slice(0, -5))).toMatch(/not JSON/);
    expect(reasonOf('')).toMatch(/not JSON/);
    for (const other of ['null', '[]', '"hushmark-venue"', '{}', '{"format":"another","version":1}'])
      expect(reasonOf(other)).toMatch(/not a room saved by Hushmark/);
    expect(reasonOf({ ...venue(), version: 2 })).toMatch(/newer Hushmark .*version 2.*reads version 1/);
    for (const version of [0, '1', null, undefined])
      expect(reasonOf({ ...venue(), version })).toMatch(/which version/);
  });

  it('[VEN2] a field that does not fit, or is missing, is named', () => {
    const whole = venue();
    expect(reasonOf({ ...whole, name: '' })).toMatch(/field name /);
    expect(reasonOf({ ...whole, roof: undefined })).toMatch(/field roof /);
    expect(reasonOf({ ...whole, room: { ...whole.room, ceilingM: 0 } })).toMatch(/field room\.ceilingM /);
    const bar = { ...whole.features.bar, heightM: 'tall' };
    expect(reasonOf({ ...whole, features: { ...whole.features, bar } })).toMatch(
      /field features\.bar\.heightM /,
    );
    expect(reasonOf({ ...whole, features: { 'a/b': tableAt(1, 1) } })).toMatch(/field features\.a\/b /);
    expect(reasonOf({ ...whole, room: { outline: CROSSING, ceilingM: 4 } })).toMatch(/walls cross/);
    const stage = tableAt(1, 1, { name: 'Stage', shape: { kind: 'outline', points: CROSSING } });
    expect(reasonOf({ ...whole, features: { stage } })).toMatch(/“Stage” crosses/);
  });

  it('[VEN2] too large, or with too much on its plan, is refused before it is looked through', () => {
    const whole = venue();
    expect(reasonOf(`${JSON.stringify(whole)}${' '.repeat(1_000_000)}`)).toMatch(/larger than 1 MB/);
    expect(reasonOf(`"${'é'.repeat(500_001)}"`), 'bytes are counted, not signs').toMatch(/larger than 1 MB/);
    const many = Object.fromEntries(Array.from({ length: 501 }, (_, at) => [`t${at}`, tableAt(1, 1)]));
    expect(reasonOf({ ...whole, features: many })).toMatch(/501 things .*500/);
    const { t500: _one, ...most } = many;
    expect(parseVenue({ ...whole, features: most }).ok).toBe(true);
  });

  it('[VEN2] whatever a file holds, reading it never throws', () => {
    fc.assert(
      fc.property(fc.oneof(fc.json(), fc.string(), fc.anything()), (input) => {
        expect(parseVenue(input).ok).toBe(false);
      }),
      { numRuns: 200 },
    );
  });

  it('[VEN2] a venue that a night cannot take changes nothing', () => {
    const { doc, lead } = demoDocument();
    const before = valuesOf(doc);
    const crossing = { ...venue(), room: { outline: CROSSING, ceilingM: 4 } };
    expect(refusal(useVenue(doc, lead, crossing))).toBe('crossing-outline');
    expect(valuesOf(doc)).toEqual(before);
  });

  it('a night without a room has none, and a name must be one', () => {
    const night = readNight(demoDocument().doc);
    expect(venueOf({ ...night, room: null }, 'Hall', 1)).toMatchObject({
      ok: false,
      reason: expect.stringMatching(/no room yet/),
    });
    expect(venueOf(night, '', 1)).toMatchObject({ ok: false, reason: expect.stringMatching(/name/) });
  });

  it('what was taken off the plan is not in it', () => {
    const { doc, lead } = demoDocument();
    done(removeFeatures(doc, lead, ['bar']));
    const saved = venueOf(readNight(doc), 'Hall', 1);
    expect(saved.ok && Object.keys(saved.venue.features)).not.toContain('bar');
  });
});
