import { distance, type Spot } from '../../geometry/spot.ts';
import type { FrameRays } from './cast-frame.ts';
import { DARK_STOPS } from './frame-stats.ts';

/** What lies behind a light, as the camera sees it; shares of all rays of the frame [1]. */
export type DarkBehind = { readonly beyondFraction: number; readonly darkFraction: number };

/**
 * How much of the picture lies behind the back light (farther from the camera on the plan than it stands)
 * and is black there (under −4 stops from mid-grey): its light goes forward, so what is behind it gets only
 * what the room returns.
 *
 * @param levels stops from mid-grey, one per ray
 * @param stand where the back light stands [m]
 * @returns share of the frame that is beyond the light, and share that is beyond and black
 * @source own-rule
 */
export function darkBehind(rays: FrameRays, levels: Float64Array, stand: Spot): DarkBehind {
  const { camera } = rays.scene;
  const standM = distance(camera.spot, stand);
  let beyond = 0;
  let dark = 0;
  for (let ray = 0; ray < rays.count; ray += 1) {
    const x = (rays.positions[3 * ray] ?? 0) - camera.spot.x;
    const y = (rays.positions[3 * ray + 1] ?? 0) - camera.spot.y;
    if (Math.hypot(x, y) <= standM) continue;
    beyond += 1;
    if ((levels[ray] ?? 0) < DARK_STOPS) dark += 1;
  }
  const count = Math.max(1, rays.count);
  return { beyondFraction: beyond / count, darkFraction: dark / count };
}
