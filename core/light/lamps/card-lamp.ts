import { pointing, type Vec3 } from '../../geometry/vec3.ts';
import { keepFinite } from '../../units/finite.ts';
import { ratioFromStops } from '../../units/stops.ts';
import { type FlashHead, headFlux, intensityToward } from '../flash-head.ts';
import type { Lamp } from '../lamp.ts';
import { bareLamp } from './bare-lamp.ts';
import { discLamp } from './disc-lamp.ts';
import { lobeOf } from './lobe.ts';
import { sumLamp } from './sum-lamp.ts';

/**
 * A white bounce card on a head that points up.
 * - widthM: of the card [m]
 * - lossStops: on its axis and far away, against the same head pointed forward bare [stops]
 * - upFraction: share of the head's light that passes the card and goes up [1], 0–1
 */
export type BounceCard = {
  readonly widthM: number;
  readonly lossStops: number;
  readonly upFraction: number;
};

/**
 * The flash on the camera with a bounce card: a small disc toward the subject, and the head's own beam, weaker,
 * square to it (straight up when the camera is level). What neither takes is lost; the card never sends out
 * more than the head leaves it, its lobe gets narrower instead.
 * ASSUMPTION: the card is an even disc as wide as the card; it cuts nothing off the beam that goes up.
 *
 * @param at middle of the card [m]
 * @param facingDeg bearing of the card's axis [°], that of the camera
 * @param tiltDeg of the card's axis, downward from level [°]
 * @returns the lamp at full power
 * @source assumption-card
 * @source cosine-power-lobe
 */
export function cardLamp(
  head: FlashHead,
  card: BounceCard,
  at: Vec3,
  facingDeg: number,
  tiltDeg: number,
): Lamp {
  const up = Math.max(0, Math.min(1, card.upFraction));
  const axisIntensity = keepFinite(intensityToward(head, 0) * ratioFromStops(-card.lossStops));
  const forward = discLamp({
    at,
    axis: pointing(facingDeg, tiltDeg),
    radiusM: card.widthM / 2,
    front: lobeOf(axisIntensity, headFlux(head) * (1 - up)),
  });
  // Light goes with the square of the guide number.
  const passing = { ...head, guideNumberM: head.guideNumberM * Math.sqrt(up) };
  return sumLamp(forward, bareLamp(passing, at, facingDeg, (tiltDeg % 360) - 90));
}
