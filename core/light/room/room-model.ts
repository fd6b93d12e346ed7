import type { Spot } from '../../geometry/spot.ts';

/**
 * What closes the room above its walls. `ceilingM` of the room is the height of the walls; a tent rises from
 * there to `peakM` over the floor.
 * - ridge: two slopes; the ridge runs along the bearing `ridgeDeg` [°] through the middle of the outline; the
 *   walls under the gables go up to it
 * - pyramid: one slope from every wall to a point over the middle of the outline
 */
export type Roof =
  | { readonly kind: 'flat' }
  | { readonly kind: 'ridge'; readonly peakM: number; readonly ridgeDeg: number }
  | { readonly kind: 'pyramid'; readonly peakM: number };

/** Diffuse reflectance of the surfaces [1], 0 to below 1. */
export type Finishes = { readonly ceiling: number; readonly walls: number; readonly floor: number };

/** A tall thing that light does not pass: a pillar, a screen, a stack of speakers. It stands on the floor. */
export type Blocker = {
  readonly id: string;
  readonly name: string;
  readonly outline: readonly Spot[];
  readonly heightM: number;
  readonly reflectance: number;
};

/** A room for the light model: a prism over a simple polygon, with a roof, finishes and tall things in it. */
export type RoomModel = {
  readonly outline: readonly Spot[];
  readonly ceilingM: number;
  readonly roof: Roof;
  readonly finishes: Finishes;
  readonly blockers: readonly Blocker[];
};
