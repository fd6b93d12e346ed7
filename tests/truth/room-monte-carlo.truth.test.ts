import { beforeAll, describe, expect, it } from 'vitest';
import { type LampKind, type RoomShape, randomRoom } from '../support/random-room.ts';
import { type Compared, compareRoom } from '../support/room-deviation.ts';
import { toleranceOf } from './tolerances.ts';

/** Rooms by seed. The seeds were not chosen: they are the first ten from 101. */
const ROOMS: readonly (readonly [RoomShape, LampKind, number])[] = [
  ['convex', 'bare', 101],
  ['convex', 'isotropic', 102],
  ['convex', 'disc', 103],
  ['convex', 'bare', 104],
  ['angled', 'bare', 105],
  ['angled', 'isotropic', 106],
  ['angled', 'disc', 107],
  ['horseshoe', 'bare', 108],
  ['pillars', 'bare', 109],
  ['tent', 'isotropic', 110],
];

const PHOTONS = 200_000;
/** Where the tracer itself is less sure than this, its value judges nothing. */
const SURE = 0.015;
const LEAST_SURE_SHARE = 0.8;

const nameOf = ([shape, kind, seed]: (typeof ROOMS)[number]) => `${shape}, ${kind}, seed ${seed}`;

// Source: an independent Monte Carlo (tests/support/tracer.ts), itself held to published values in
// tracer.truth.test.ts.
describe('the room against a Monte Carlo that shares nothing with it', () => {
  let all: (Compared & { readonly room: string })[] = [];
  const sure = () => all.filter(({ error }) => error < SURE);

  beforeAll(() => {
    all = ROOMS.flatMap((room) => {
      const [shape, kind, seed] = room;
      const found = compareRoom(randomRoom(shape, kind, seed), { photons: PHOTONS, seed: seed + 1000 });
      return found.map((one) => ({ ...one, room: nameOf(room) }));
    });
  });

  it('is sure of at least four quantities in five', () => {
    expect(all.length).toBeGreaterThan(240);
    expect(sure().length / all.length).toBeGreaterThanOrEqual(LEAST_SURE_SHARE);
  });

  it('deviates by at most 5 % in the mean of all ten rooms', () => {
    const mean = sure().reduce((sum, { deviation }) => sum + Math.abs(deviation), 0) / sure().length;
    expect(mean).toBeLessThanOrEqual(toleranceOf('room-mean'));
  });

  it.each(ROOMS.map(nameOf))('%s: nowhere off by more than 12 %', (name) => {
    const here = sure().filter(({ room }) => room === name);
    expect(here.length).toBeGreaterThan(15);
    const most = toleranceOf('room-most');
    const wide = here
      .filter(({ deviation }) => !(Math.abs(deviation) <= most))
      .map(({ what, model, traced, deviation }) => {
        const percent = (100 * deviation).toFixed(1);
        return `${what}: ${model.toPrecision(4)} against ${traced.mean.toPrecision(4)}, ${percent} %`;
      });
    expect(wide).toEqual([]);
  });
});
