import { keepFinite } from '../../units/finite.ts';
import { ratioFromStops } from '../../units/stops.ts';

/**
 * What a guide number was measured in.
 * - printed: as in a leaflet, for an average subject in a room with a light ceiling of ten feet: it holds what
 *   such a room gives back
 * - open: measured with no room about it
 */
export type GuideNumberKind = 'printed' | 'open';

/**
 * ASSUMPTION: an average room adds half a stop to a printed guide number. That it holds a room is published;
 * how much it is worth is common practice. The room model itself finds 0.2 to 0.4 stop for a beam of 35 to 24 mm
 * with a dome at the subject, under 0.2 with a flat receptor turned to the flash: the rest is what leaflets are
 * better than heads. A test frame settles it.
 *
 * @source navedtra14209
 * @source assumption-average-room
 */
export const AVERAGE_ROOM_STOPS = 0.5;

/**
 * Guide number of the head alone, which the room model may add its own light to: a printed one loses
 * AVERAGE_ROOM_STOPS, so that no room is counted twice.
 *
 * @param guideNumberM GN as listed [m], ISO 100
 * @param kind what it was measured in
 * @returns GN [m] with no room about it
 * @source navedtra14209
 * @source assumption-average-room
 */
export function openGuideNumberM(guideNumberM: number, kind: GuideNumberKind): number {
  // Light goes with the square of the guide number: half the stops.
  return kind === 'open' ? guideNumberM : keepFinite(guideNumberM * ratioFromStops(-AVERAGE_ROOM_STOPS / 2));
}
