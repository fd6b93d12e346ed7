import type { StandBuild } from '../../core/cautions/tipping.ts';
import type { KeySource } from '../../core/light/umbrella.ts';
import type { Stand } from '../../shared/document/parts.ts';
import type { GearItem } from '../../shared/document/schema.ts';
import type { Night } from '../../shared/document/snapshot.ts';
import { asId, type GearId } from '../../shared/ids.ts';

type ItemOf<Kind extends GearItem['kind']> = Extract<GearItem, { kind: Kind }>;

function item<Kind extends GearItem['kind']>(
  night: Night,
  id: string | null,
  kind: Kind,
): ItemOf<Kind> | null {
  const found = id === null ? undefined : night.gear.get(asId<GearId>(id));
  return found?.kind === kind ? (found as ItemOf<Kind>) : null;
}

export const umbrellaOf = (night: Night, stand: Stand): ItemOf<'umbrella'> | null =>
  item(night, stand.kit.umbrellaGear, 'umbrella');

/** The light a stand carries, for the light model; null when its head is not in the gear list. */
export function sourceOf(night: Night, stand: Stand): KeySource | null {
  const head = item(night, stand.kit.headGear, 'head');
  if (!head) return null;
  const umbrella = umbrellaOf(night, stand);
  return {
    head: {
      guideNumberM: head.guideNumberM,
      zoomMm: head.zoomMm,
      leastPowerStops: head.leastPowerStops,
    },
    umbrella: umbrella && { diameterM: umbrella.diameterM, forwardFraction: umbrella.forwardFraction },
  };
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
