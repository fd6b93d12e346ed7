import { contains } from '../geometry/polygon.ts';
import type { Spot } from '../geometry/spot.ts';
import { type Caution, metresInWords, notChecked } from './caution.ts';
import type { WidthLeft } from './walkway.ts';

/** Clear width of an accessible route, 36 in [m]. @source ada-clear-width */
export const CLEAR_WIDTH_M = 0.915;
/** Its least width over a very short length, 32 in [m]. @source ada-clear-width */
export const PINCH_WIDTH_M = 0.815;
/** Least width of any exit access at a workplace, 28 in [m]. @source osha-exit-width */
const EXIT_ACCESS_M = 0.711;

const SOURCE = 'US accessible-route width, 36 in (32 in over a short length)';
const TITLE = 'Walkway width';

/**
 * Whether enough width is left to walk past a stand.
 *
 * @param stand place on the plan [m]
 * @param room outline [m]
 * @param width from `widthLeft`; null when it found no way past the stand
 * @returns 'stop' under 0.815 m, 'caution' under 0.915 m, else null; an 'info' "Not checked" when the room
 *   is not drawn or the stand is outside it
 * @source ada-clear-width
 * @source osha-exit-width
 */
export function walkwayCaution({
  stand,
  room,
  width,
}: {
  readonly stand: Spot;
  readonly room: readonly Spot[];
  readonly width: WidthLeft | null;
}): Caution | null {
  if (room.length < 3) return notChecked('walkway', TITLE, 'the room has no outline', SOURCE);
  if (!contains(room, stand)) return notChecked('walkway', TITLE, 'the stand is outside the room', SOURCE);
  if (!width || width.leftM >= CLEAR_WIDTH_M) return null;
  const level = width.leftM < PINCH_WIDTH_M ? 'stop' : 'caution';
  const floor =
    width.leftM < EXIT_ACCESS_M ? ` Under ${EXIT_ACCESS_M} m it is too narrow for any way to an exit.` : '';
  return {
    id: 'walkway',
    level,
    title: level === 'stop' ? 'Walkway blocked' : 'Walkway narrow',
    detail:
      `Leaves ${metresInWords(width.leftM)} of ${metresInWords(width.gapM)} between ${width.between[0]} and ` +
      `${width.between[1]}; a wheelchair route needs ${CLEAR_WIDTH_M} m, ${PINCH_WIDTH_M} m over a very ` +
      `short length.${floor} Local rules come first.`,
    value: width.leftM,
    limit: level === 'stop' ? PINCH_WIDTH_M : CLEAR_WIDTH_M,
    unit: 'm',
    source: SOURCE,
  };
}
