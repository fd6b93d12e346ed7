import { above } from '../../geometry/vec3.ts';
import type { Mark } from '../../placing/mark.ts';
import type { FlashHead } from '../flash-head.ts';
import type { Lamp } from '../lamp.ts';
import type { Umbrella } from '../umbrella.ts';
import { bareLamp } from './bare-lamp.ts';
import { type BounceCard, cardLamp } from './card-lamp.ts';
import { umbrellaLamp } from './umbrella-lamp.ts';

/** What a flash is put together from; plain values, so that it can be kept, compared and sent. */
export type LampRecipe =
  | { readonly kind: 'bare'; readonly head: FlashHead }
  | { readonly kind: 'umbrella'; readonly head: FlashHead; readonly umbrella: Umbrella }
  | { readonly kind: 'card'; readonly head: FlashHead; readonly card: BounceCard };

/**
 * The lamp that a recipe makes at a mark. A head on the camera that is turned to ceiling or wall is bare: the
 * room does the rest.
 *
 * @returns the lamp at full power; the mark's power is not in it
 * @source iso1230
 */
export function lampOf(recipe: LampRecipe, mark: Mark): Lamp {
  const at = above(mark.spot, mark.heightM);
  const { facingDeg, tiltDeg } = mark;
  switch (recipe.kind) {
    case 'bare':
      return bareLamp(recipe.head, at, facingDeg, tiltDeg);
    case 'umbrella':
      return umbrellaLamp(recipe.head, recipe.umbrella, at, facingDeg, tiltDeg);
    case 'card':
      return cardLamp(recipe.head, recipe.card, at, facingDeg, tiltDeg);
  }
}
