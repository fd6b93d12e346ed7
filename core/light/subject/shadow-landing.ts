import { contains, edgesOf } from '../../geometry/polygon.ts';
import { rayToOutline } from '../../geometry/ray.ts';
import { distance, type Spot, unit } from '../../geometry/spot.ts';
import type { Vec3 } from '../../geometry/vec3.ts';
import { keepFinite } from '../../units/finite.ts';
import type { Surface } from '../room/exchange.ts';
import type { RoomModel } from '../room/room-model.ts';
import { penumbraM } from './penumbra.ts';

/** Where the shadow of the subject's head falls, or why it falls nowhere that counts. */
export type ShadowLanding =
  | {
      readonly kind: 'lands';
      readonly surface: Surface;
      readonly spot: Spot;
      /** Above the floor [m] */
      readonly heightM: number;
      /** On the plan, from the head to where its shadow falls [m] */
      readonly behindM: number;
      /** Width of the shadow's soft edge, square to the ray [m] */
      readonly penumbraM: number;
    }
  | {
      readonly kind: 'none';
      readonly reason: 'light-below-head' | 'light-on-head' | 'head-outside' | 'over-the-walls';
    };

type None = Extract<ShadowLanding, { kind: 'none' }>;
/** A place that the ray may end at: plan distance behind the head, and what is there. */
type End = { readonly behindM: number; readonly surface: Surface };

/** Nearer than this the head is in the light [m]. */
const NEAREST_M = 0.05;

/** Of the side of a blocker that the falling ray meets, or its top; null when it passes beside or over it. */
function endOnBlocker(
  from: Spot,
  way: Spot,
  heightAt: (behindM: number) => number,
  { outline, heightM }: { readonly outline: readonly Spot[]; readonly heightM: number },
  fallPerM: number,
): number | null {
  let nearest: number | null = null;
  const keep = (behindM: number) => {
    if (nearest === null || behindM < nearest) nearest = behindM;
  };
  for (const edge of edgesOf(outline)) {
    const hit = rayToOutline(from, way, edge, 0);
    if (hit && heightAt(hit.distanceM) <= heightM) keep(hit.distanceM);
  }
  const topM = fallPerM > 0 ? (heightAt(0) - heightM) / fallPerM : -1;
  if (topM >= 0 && contains(outline, spotAt(from, way, topM))) keep(topM);
  return nearest;
}

function spotAt(from: Spot, way: Spot, alongM: number): Spot {
  return { x: keepFinite(from.x + way.x * alongM), y: keepFinite(from.y + way.y * alongM) };
}

function whyNone(light: Vec3, head: Vec3, room: Pick<RoomModel, 'outline'>): None | null {
  const apartM = Math.hypot(distance(light, head), light.z - head.z);
  if (!(apartM >= NEAREST_M)) return { kind: 'none', reason: 'light-on-head' };
  if (light.z < head.z) return { kind: 'none', reason: 'light-below-head' };
  if (!contains(room.outline, head)) return { kind: 'none', reason: 'head-outside' };
  return null;
}

/** The nearest thing that the ray ends on. */
function endOf(head: Vec3, way: Spot, fallPerM: number, room: ShadowRoom): End | null {
  const heightAt = (behindM: number) => head.z - behindM * fallPerM;
  const ends: End[] = [];
  const wall = rayToOutline(head, way, room.outline, 0);
  if (wall) ends.push({ behindM: wall.distanceM, surface: { kind: 'wall', wall: wall.edge } });
  if (fallPerM > 0) ends.push({ behindM: head.z / fallPerM, surface: { kind: 'floor' } });
  for (const [index, blocker] of room.blockers.entries()) {
    const behindM = endOnBlocker(head, way, heightAt, blocker, fallPerM);
    if (behindM !== null) ends.push({ behindM, surface: { kind: 'blocker', blocker: index } });
  }
  return ends
    .filter(({ behindM }) => Number.isFinite(behindM))
    .reduce<End | null>((best, end) => (best === null || end.behindM < best.behindM ? end : best), null);
}

/** What of a room a shadow can fall on. */
export type ShadowRoom = Pick<RoomModel, 'outline' | 'ceilingM' | 'blockers'>;

/**
 * Where the shadow of the subject's head falls: the straight line from the light through the head's centre,
 * on to the floor, a wall or a tall thing, whichever comes first.
 *
 * @param light, head centres [m]; the head is inside the room
 * @param diameterM of what shines [m]; 0 for a bare head
 * @param room `ceilingM` is the height of its walls
 * @returns where, and how soft its edge is (w = D·b/a); 'none' when the light is lower than the head (the
 *   shadow goes up), in the head, the head is outside the room, or the walls end below the shadow
 * @source shadow-geometry
 */
export function shadowLanding({
  light,
  diameterM,
  head,
  room,
}: {
  readonly light: Vec3;
  readonly diameterM: number;
  readonly head: Vec3;
  readonly room: ShadowRoom;
}): ShadowLanding {
  const none = whyNone(light, head, room);
  if (none) return none;
  const apartM = distance(light, head);
  const way = unit({ x: head.x - light.x, y: head.y - light.y });
  const end: End | null =
    way && apartM > 1e-9
      ? endOf(head, way, (light.z - head.z) / apartM, room)
      : { behindM: 0, surface: { kind: 'floor' } };
  if (!end) return { kind: 'none', reason: 'head-outside' };
  const onFloor = end.surface.kind === 'floor';
  const heightM = onFloor || !way ? 0 : keepFinite(head.z - (end.behindM * (light.z - head.z)) / apartM);
  if (end.surface.kind === 'wall' && heightM > room.ceilingM) {
    return { kind: 'none', reason: 'over-the-walls' };
  }
  const lightToHeadM = keepFinite(Math.hypot(apartM, light.z - head.z));
  const headToEndM = keepFinite(Math.hypot(end.behindM, head.z - heightM));
  return {
    kind: 'lands',
    surface: end.surface,
    spot: way ? spotAt(head, way, end.behindM) : { x: head.x, y: head.y },
    heightM,
    behindM: end.behindM,
    penumbraM: penumbraM(diameterM, lightToHeadM, headToEndM) ?? 0,
  };
}
