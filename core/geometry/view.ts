import { keepFinite } from '../units/finite.ts';
import { distance, type Spot, subtract, unit } from './spot.ts';

/** A point in the camera's eyes [m]: aside (+ right), up (+ up the picture), deep (+ in front). */
export type InView = { readonly asideM: number; readonly upM: number; readonly deepM: number };

/** A place in the room: on the plan and above the floor [m]. */
export type Place = { readonly spot: Spot; readonly heightM: number };

/**
 * How a camera sees places: its position, what it aims at, held level (no roll).
 *
 * @returns a function from a place to the camera's own coordinates [m]; null when it looks straight up,
 *   straight down or nowhere
 * @source angle-of-view
 */
export function createView(camera: Place, aim: Place): ((place: Place) => InView) | null {
  const forward = unit(subtract(aim.spot, camera.spot));
  if (!forward) return null;
  const planM = distance(camera.spot, aim.spot);
  const pitch = Math.atan2(aim.heightM - camera.heightM, planM);
  const cosPitch = Math.cos(pitch);
  const sinPitch = Math.sin(pitch);
  return (place) => {
    const way = subtract(place.spot, camera.spot);
    const ahead = keepFinite(way.x * forward.x + way.y * forward.y);
    const above = keepFinite(place.heightM - camera.heightM);
    return {
      asideM: keepFinite(-way.x * forward.y + way.y * forward.x),
      upM: keepFinite(above * cosPitch - ahead * sinPitch),
      deepM: keepFinite(ahead * cosPitch + above * sinPitch),
    };
  };
}
