import { radFromDeg } from '../geometry/angle.ts';
import { distanceToOutline } from '../geometry/polygon.ts';
import { type RayHit, rayToOutline } from '../geometry/ray.ts';
import { distance, type Spot } from '../geometry/spot.ts';
import { keepFinite } from '../units/finite.ts';
import { type LandmarkName, spokenName } from './landmark.ts';
import type { WalkFloor, WalkObstacle } from './walk-floor.ts';

/** The wall, where a sentence has to name it. */
const WALL: LandmarkName = { id: 'wall', name: 'Wall' };
/** What bounds the floor around a spot: the names, most of it first, and how much floor one sees [m²]. */
export type Surroundings = { readonly names: readonly LandmarkName[]; readonly seenM2: number };

const LOOK_EVERY_DEG = 5;
/** More names than this shut nothing in clearly. */
const MOST_NAMES = 3;

/** "The bar, the wall and table 4". */
function listed(names: readonly LandmarkName[]): string {
  const spoken = names.map(({ name }) => spokenName(name));
  const last = spoken.pop() ?? '';
  return spoken.length === 0 ? last : `${spoken.join(', ')} and ${last}`;
}

function near(hit: RayHit | null): number {
  return hit ? hit.distanceM : Number.POSITIVE_INFINITY;
}

type Round = {
  readonly thing: WalkObstacle;
  readonly corner: Spot;
  readonly reachM: number;
  readonly leastAwayM: number;
};

/** A thing within a circle around its first corner, its rim included. */
function rounded(from: Spot, thing: WalkObstacle, marginM: number): Round[] {
  const corner = thing.outline[0];
  if (!corner) return [];
  const reachM = Math.max(...thing.outline.map((each) => distance(each, corner))) + marginM;
  return [{ thing, corner, reachM, leastAwayM: distance(from, corner) - reachM }];
}

/** Could a ray meet what is in a circle? */
function mayMeet(from: Spot, direction: Spot, { corner, reachM }: Round): boolean {
  const x = corner.x - from.x;
  const y = corner.y - from.y;
  return x * direction.x + y * direction.y > -reachM && Math.abs(direction.x * y - direction.y * x) < reachM;
}

/**
 * What one meets who walks straight away from a spot, in every direction.
 *
 * @param spot clear of everything by marginM
 * @param marginM radius of the walker [m]
 * @source own-rule
 */
export function surroundings(floor: WalkFloor, spot: Spot, marginM: number): Surroundings {
  const met = new Map<string, { name: LandmarkName; times: number }>();
  // Near things first: what lies behind the first one met need not be looked at.
  const rounds = floor.obstacles
    .flatMap((thing) => rounded(spot, thing, marginM))
    .sort((a, b) => a.leastAwayM - b.leastAwayM);
  let seenM2 = 0;
  for (let turnDeg = 0; turnDeg < 360; turnDeg += LOOK_EVERY_DEG) {
    const turn = radFromDeg(turnDeg);
    const direction = { x: Math.cos(turn), y: Math.sin(turn) };
    let awayM = near(rayToOutline(spot, direction, floor.outline, marginM));
    let name: LandmarkName = WALL;
    for (const round of rounds) {
      if (round.leastAwayM >= awayM) break;
      if (!mayMeet(spot, direction, round)) continue;
      const { thing } = round;
      const thingM = near(rayToOutline(spot, direction, thing.outline, marginM));
      if (thingM < awayM) [awayM, name] = [thingM, { id: thing.id, name: thing.name }];
    }
    if (!Number.isFinite(awayM)) continue;
    seenM2 = keepFinite(seenM2 + 0.5 * awayM * awayM * radFromDeg(LOOK_EVERY_DEG));
    met.set(name.id, { name, times: (met.get(name.id)?.times ?? 0) + 1 });
  }
  const names = [...met.values()].sort((a, b) => b.times - a.times).map((each) => each.name);
  return { names, seenM2 };
}

/**
 * Words for a spot that nobody can get to, or away from.
 *
 * @param what the spot in words: "the mark"
 * @source own-rule
 */
export function shutInWords(what: string, { names }: Surroundings): string {
  if (names.length === 0 || names.length > MOST_NAMES) return `${what} is shut in by what stands around it`;
  return `${what} is shut in by ${listed(names)}`;
}

/**
 * Words for a spot where things stand so close that nobody gets in or out.
 *
 * @param what the spot in words: "the mark"
 * @param withinM things nearer than this are named [m]
 * @source own-rule
 */
export function tooTightWords(what: string, floor: WalkFloor, spot: Spot, withinM: number): string {
  const names = floor.obstacles.filter(
    (thing) => (distanceToOutline(thing.outline, spot) ?? withinM) < withinM,
  );
  return names.length === 0 || names.length > MOST_NAMES
    ? `there is no room to walk at ${what}`
    : `there is no room to walk at ${what}, beside ${listed(names)}`;
}
