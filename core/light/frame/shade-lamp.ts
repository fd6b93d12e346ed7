import { keepFinite } from '../../units/finite.ts';
import { INCIDENT_C, REFLECTED_K } from '../exposure.ts';
import type { Lamp } from '../lamp.ts';
import type { LampLight } from '../room/exchange.ts';
import type { Sight } from '../room/sight.ts';
import type { FrameRays } from './cast-frame.ts';
import type { FrameLinks } from './link-frame.ts';
import { meetBody, meetHead, type Person } from './person.ts';
import { HIT_KINDS } from './shell.ts';
import type { Hit } from './solid.ts';

/**
 * Reflectance that an incident meter and a reflected-light meter agree on: πK/C = 0.157 for K = 12.5 and
 * C = 250 (flat receptor). A surface of this reflectance, lit as the incident meter asks, is mid-grey [1].
 *
 * @source iso2720
 */
export const MID_REFLECTANCE = (Math.PI * REFLECTED_K) / INCIDENT_C;

/** Views of a thing's middle, six ways. */
const WAYS = 6;
/** Where a way ends on a surface, so much of it is left out [m]. */
const SKIN_M = 1e-4;

/** One of these for all tests of one lamp: nothing is made anew in the loop. */
function blankHit(): Hit {
  return { distanceM: 0, kind: 0, index: 0, nx: 0, ny: 0, nz: 0 };
}

/** Does the subject stand between a lamp and ray i's hit? Its head shades its body, but neither shades itself. */
function subjectShades(
  person: Person,
  lamp: Lamp,
  x: number,
  y: number,
  z: number,
  kind: number,
  hit: Hit,
): boolean {
  const dx = x - lamp.x;
  const dy = y - lamp.y;
  const dz = z - lamp.z;
  const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
  hit.distanceM = length - SKIN_M;
  const [ux, uy, uz] = [dx / length, dy / length, dz / length];
  if (kind !== HIT_KINDS.head && meetHead(person, lamp.x, lamp.y, lamp.z, ux, uy, uz, hit)) return true;
  return kind !== HIT_KINDS.body && meetBody(person, lamp.x, lamp.y, lamp.z, ux, uy, uz, hit);
}

/** Light straight from a lamp on what ray i meets [lx·s]. */
function directOn(rays: FrameRays, ray: number, sight: Sight, lamp: Lamp, hit: Hit): number {
  const { positions, normals } = rays;
  const a = 3 * ray;
  const x = positions[a] as number;
  const y = positions[a + 1] as number;
  const z = positions[a + 2] as number;
  const light = lamp.on(x, y, z, normals[a] as number, normals[a + 1] as number, normals[a + 2] as number);
  if (!(light > 0)) return 0;
  if (subjectShades(rays.person, lamp, x, y, z, rays.kinds[ray] as number, hit)) return 0;
  return sight.clear(lamp.x, lamp.y, lamp.z, x, y, z) ? light : 0;
}

/** What the middle of each thing without patches gets from the room, six ways each [lx·s]. */
function cubesOf({ rows, patchCount }: FrameLinks, exitance: Float64Array): Float64Array {
  const cubes = new Float64Array(patchCount > 0 ? rows.length / patchCount : 0);
  for (let row = 0; row < cubes.length; row += 1) {
    let sum = 0;
    const start = row * patchCount;
    for (let patch = 0; patch < patchCount; patch += 1) {
      sum += (rows[start + patch] as number) * (exitance[patch] ?? 0);
    }
    cubes[row] = sum;
  }
  return cubes;
}

/** Light that the room returns to what ray i meets [lx·s]. */
function returnedOn(links: FrameLinks, ray: number, returned: Float64Array, cubes: Float64Array): number {
  const a = 3 * ray;
  const cube = links.cubes[ray] as number;
  if (cube < 0) {
    const { patches, weights } = links;
    return (
      (weights[a] as number) * (returned[patches[a] as number] ?? 0) +
      (weights[a + 1] as number) * (returned[patches[a + 1] as number] ?? 0) +
      (weights[a + 2] as number) * (returned[patches[a + 2] as number] ?? 0)
    );
  }
  const { normals } = links.rays;
  let sum = 0;
  for (let axis = 0; axis < 3; axis += 1) {
    const n = normals[a + axis] as number;
    // The squares of a unit normal's parts sum to 1: even light from all round stays what it is.
    sum += n * n * (cubes[cube * WAYS + 2 * axis + (n < 0 ? 1 : 0)] ?? 0);
  }
  return sum;
}

/**
 * What comes straight from one lamp at full power, for every ray: light on what it meets times its reflectance
 * over that of mid-grey. ASSUMPTION: shadows are those of the lamp's middle, with a hard edge; tables throw none.
 *
 * @param sight of the room that the rays were cast in
 * @returns one number per ray [lx·s]
 * @source iso2720
 */
export function shadeStraight({ rays }: FrameLinks, sight: Sight, lamp: Lamp): Float64Array {
  const shade = new Float64Array(rays.count);
  const hit = blankHit();
  for (let ray = 0; ray < rays.count; ray += 1) {
    if (rays.kinds[ray] === HIT_KINDS.nothing) continue;
    const luxSeconds = directOn(rays, ray, sight, lamp, hit);
    shade[ray] = keepFinite((luxSeconds * (rays.reflectances[ray] as number)) / MID_REFLECTANCE);
  }
  return shade;
}

/**
 * What the room returns of one lamp at full power, for every ray: light on what it meets times its reflectance
 * over that of mid-grey.
 *
 * @param light what the lamp at full power does to the room
 * @returns one number per ray [lx·s]
 * @source iso2720
 */
export function shadeReturned(links: FrameLinks, light: LampLight): Float64Array {
  const { rays } = links;
  const shade = new Float64Array(rays.count);
  const cubes = cubesOf(links, light.exitance);
  for (let ray = 0; ray < rays.count; ray += 1) {
    if (rays.kinds[ray] === HIT_KINDS.nothing) continue;
    const luxSeconds = returnedOn(links, ray, light.returned, cubes);
    shade[ray] = keepFinite((luxSeconds * (rays.reflectances[ray] as number)) / MID_REFLECTANCE);
  }
  return shade;
}

/**
 * What one lamp at full power does to the picture, straight and returned together: `shadeStraight` plus
 * `shadeReturned`. Power and exposure are factors on it: see `combineShades`. A moved lamp needs only its own
 * shade anew.
 *
 * @param light what the lamp at full power does to the room; null for what comes straight from it alone
 * @returns one number per ray [lx·s]
 * @source iso2720
 */
export function shadeLamp(
  links: FrameLinks,
  sight: Sight,
  lamp: Lamp,
  light: LampLight | null,
): Float64Array {
  const shade = shadeStraight(links, sight, lamp);
  if (!light) return shade;
  const returned = shadeReturned(links, light);
  for (let ray = 0; ray < shade.length; ray += 1) {
    shade[ray] = keepFinite((shade[ray] as number) + (returned[ray] as number));
  }
  return shade;
}
