import { wrap180 } from '../geometry/angle.ts';
import { contains } from '../geometry/polygon.ts';
import { distance, type Spot } from '../geometry/spot.ts';
import { bearingDeg } from './bearing.ts';
import { type Landmark, middleOf } from './landmark.ts';

/** One answer to "I'm facing …". */
export type Facing = { readonly id: string; readonly label: string; readonly bearingDeg: number };

/** More answers than this do not fit a thumb. */
const MOST_FACINGS = 5;
/** Nearer together than this two answers cannot be told apart by turning the body [°]. */
const APART_DEG = 25;

/** Id of the answer "the couple". */
export const COUPLE_ID = 'couple';

/**
 * Things around a person that they may say they face: the couple first, then tall landmarks, near before
 * far, each at least 25° from the others.
 *
 * @param at where the person is [m]
 * @param subject where the couple is [m]; null when there is none
 * @returns up to five answers with bearings clockwise from plan-up [°]
 * @source guidance-convention
 */
export function facings({
  at,
  landmarks,
  subject,
}: {
  readonly at: Spot;
  readonly landmarks: readonly Landmark[];
  readonly subject: Spot | null;
}): Facing[] {
  const around = landmarks
    .filter((landmark) => landmark.outline.length > 0 && !contains(landmark.outline, at))
    .map((landmark) => ({ landmark, middle: middleOf(landmark) }))
    .sort(
      (a, b) =>
        Number(b.landmark.tall) - Number(a.landmark.tall) || distance(at, a.middle) - distance(at, b.middle),
    )
    .map(({ landmark, middle }) => ({ id: landmark.id, label: landmark.name, spot: middle }));
  const couple = subject ? [{ id: COUPLE_ID, label: 'Couple', spot: subject }] : [];
  const chosen: Facing[] = [];
  for (const { id, label, spot } of [...couple, ...around]) {
    const bearing = bearingDeg(at, spot);
    if (bearing === null || chosen.length >= MOST_FACINGS) continue;
    const apart = chosen.every((other) => Math.abs(wrap180(other.bearingDeg - bearing)) >= APART_DEG);
    if (apart) chosen.push({ id, label, bearingDeg: bearing });
  }
  return chosen;
}
