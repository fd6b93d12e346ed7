import { keepFinite } from '../../units/finite.ts';
import type { Lamp } from '../lamp.ts';
import type { RoomExchange } from './exchange.ts';
import { patchDetail } from './patch-detail.ts';
import type { Sight } from './sight.ts';
import { quadCount, type Spread, spreadOver } from './spread.ts';

/** A part is split while its four points differ by more than this share of all the lamp's light. */
const SPLIT_SHARE = 4e-3;
/** … and while it looks wider than this from the lamp: a narrow beam cannot hide between its points [rad]. */
const WIDEST_RAD = 0.4;
/** How often a patch may be halved each way: to 3 cm of a metre. */
const MOST_SPLITS = 5;
/** Gauss–Legendre points of two on [0, 1]. */
const LOW = 0.5 - Math.sqrt(3) / 6;
const HIGH = 0.5 + Math.sqrt(3) / 6;

const spread: Spread = { x: 0, y: 0, z: 0, weightM2: 0 };

/** What stays the same while one patch is looked at. */
type Look = {
  readonly lamp: Lamp;
  readonly sight: Sight;
  readonly corners: Float64Array;
  readonly nx: number;
  readonly ny: number;
  readonly nz: number;
};

/** Light on a square part of one four-sided piece of a patch, split as far as it matters [lx·s·m²]. */
function partFlux(
  look: Look,
  quad: number,
  across: number,
  along: number,
  side: number,
  wideRad: number,
  split: number,
): number {
  const { lamp, sight, nx, ny, nz } = look;
  let sum = 0;
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  for (let k = 0; k < 4; k += 1) {
    spreadOver(
      look.corners,
      quad,
      across + side * (k & 1 ? HIGH : LOW),
      along + side * (k & 2 ? HIGH : LOW),
      spread,
    );
    const { x, y, z, weightM2 } = spread;
    const light = lamp.on(x, y, z, nx, ny, nz);
    const flux = light > 0 && sight.clear(x, y, z, lamp.x, lamp.y, lamp.z) ? light * weightM2 : 0;
    sum += flux;
    least = Math.min(least, flux);
    most = Math.max(most, flux);
  }
  const area = side * side;
  if (split === 0 || (wideRad <= WIDEST_RAD && (most - least) * area <= SPLIT_SHARE * lamp.flux))
    return (sum * area) / 4;
  const half = side / 2;
  let parts = 0;
  for (let k = 0; k < 4; k += 1) {
    const [a, b] = [across + (k & 1 ? half : 0), along + (k & 2 ? half : 0)];
    parts += partFlux(look, quad, a, b, half, wideRad / 2, split - 1);
  }
  return parts;
}

/**
 * Straight from a lamp, mean over the open part of each patch: four points on each, more where the light changes
 * so fast (a lamp near by, the edge of a beam, the edge of a shadow) that it matters to the room as a whole.
 *
 * @returns [lx·s], one per patch
 * @source radiosity
 */
export function directOn(exchange: RoomExchange, sight: Sight, lamp: Lamp): Float64Array {
  const { count, centres, normals, areas, corners } = exchange.patches;
  const { spans } = patchDetail(exchange.room, exchange.patches);
  const direct = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const nx = normals[3 * i] as number;
    const ny = normals[3 * i + 1] as number;
    const nz = normals[3 * i + 2] as number;
    const dx = lamp.x - (centres[3 * i] as number);
    const dy = lamp.y - (centres[3 * i + 1] as number);
    const dz = lamp.z - (centres[3 * i + 2] as number);
    const offPlaneM = nx * dx + ny * dy + nz * dz;
    if (offPlaneM <= 0) continue;
    const span = spans[i] as number;
    const squareAside = Math.max(0, dx * dx + dy * dy + dz * dz - offPlaneM * offPlaneM);
    const nearestM = Math.hypot(offPlaneM, Math.max(0, Math.sqrt(squareAside) - 0.5 * span));
    const look = { lamp, sight, corners: corners[i] as Float64Array, nx, ny, nz };
    let flux = 0;
    for (let quad = 0; quad < quadCount(look.corners); quad += 1) {
      flux += partFlux(look, quad, 0, 0, 1, span / Math.max(nearestM, 1e-3 * span), MOST_SPLITS);
    }
    direct[i] = keepFinite(flux / (areas[i] as number));
  }
  return direct;
}
