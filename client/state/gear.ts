import type { StandBuild } from '../../core/cautions/tipping.ts';
import type { FlashHead } from '../../core/light/flash-head.ts';
import { openGuideNumberM } from '../../core/light/lamps/guide-number-meaning.ts';
import type { LampRecipe } from '../../core/light/lamps/lamp-recipe.ts';
import type { KeySource, Umbrella } from '../../core/light/umbrella.ts';
import type { Stand } from '../../shared/document/parts.ts';
import type { GearItem } from '../../shared/document/schema.ts';
import type { Night } from '../../shared/document/snapshot.ts';
import { asId, type GearId } from '../../shared/ids.ts';

export type ItemOf<Kind extends GearItem['kind']> = Extract<GearItem, { kind: Kind }>;

/** A piece of gear by its id, if it is of this kind. */
export function item<Kind extends GearItem['kind']>(
  night: Night,
  id: string | null,
  kind: Kind,
): ItemOf<Kind> | null {
  const found = id === null ? undefined : night.gear.get(asId<GearId>(id));
  return found?.kind === kind ? (found as ItemOf<Kind>) : null;
}

export const umbrellaOf = (night: Night, stand: Stand): ItemOf<'umbrella'> | null =>
  item(night, stand.kit.umbrellaGear, 'umbrella');

/** A guide number of which nobody has said what it means is taken for the one in the leaflet. */
function headOf(flash: ItemOf<'head'> | ItemOf<'flash'>): FlashHead {
  return {
    guideNumberM: openGuideNumberM(flash.guideNumberM, flash.guideNumberKind ?? 'printed'),
    zoomMm: flash.zoomMm,
    leastPowerStops: flash.leastPowerStops,
  };
}

function umbrellaFor(umbrella: ItemOf<'umbrella'>): Umbrella {
  const { diameterM, forwardFraction, backFraction, lossStops } = umbrella;
  return { diameterM, forwardFraction, backFraction, lossStops };
}

/** The light of a head and perhaps an umbrella of the gear list; null when the list does not hold the head. */
export function recipeFor(night: Night, headGear: string, umbrellaGear: string | null): LampRecipe | null {
  const head = item(night, headGear, 'head');
  const umbrella = item(night, umbrellaGear, 'umbrella');
  if (!head) return null;
  return umbrella
    ? { kind: 'umbrella', head: headOf(head), umbrella: umbrellaFor(umbrella) }
    : { kind: 'bare', head: headOf(head) };
}

/** The light a stand carries, for the light sheet; null when its head is not in the gear list. */
export function sourceOf(night: Night, stand: Stand): KeySource | null {
  const recipe = recipeFor(night, stand.kit.headGear, stand.kit.umbrellaGear);
  if (!recipe) return null;
  return { head: recipe.head, umbrella: recipe.kind === 'umbrella' ? recipe.umbrella : null };
}

/** The flash on the camera as it is used: straight, with its card, or turned away; null when none is listed. */
export function cameraRecipe(
  night: Night,
  use: 'direct' | 'card' | 'bounce',
  kit: { readonly flashGear: string; readonly cardGear: string | null },
): LampRecipe | null {
  const flash = item(night, kit.flashGear, 'flash');
  if (!flash) return null;
  const card = item(night, kit.cardGear, 'card');
  if (use !== 'card' || !card) return { kind: 'bare', head: headOf(flash) };
  const { widthM, lossStops, upFraction } = card;
  return { kind: 'card', head: headOf(flash), card: { widthM, lossStops, upFraction } };
}

/** How a stand is built and weighted, for the tipping check; null when the gear list does not know it. */
export function buildOf(night: Night, stand: Stand): StandBuild | null {
  const legs = item(night, stand.kit.standGear, 'stand');
  const head = item(night, stand.kit.headGear, 'head');
  if (!legs || !head) return null;
  return {
    legs: legs.legs,
    legRadiusM: legs.legRadiusM,
    standKg: legs.massKg,
    standCgM: legs.centreM,
    headKg: head.massKg + (umbrellaOf(night, stand)?.massKg ?? 0),
    ballastKg: legs.ballastKg,
    ballastAt: { x: 0, y: 0 },
    // A bag on the legs hangs low: its centre lies about a hand's breadth over the floor.
    ballastCgM: 0.15,
  };
}
