import type { RoomModel } from './room-model.ts';

/** Which part of the room a patch belongs to; a feature's sides and top carry the number of its blocker. */
export type Surface =
  | { readonly kind: 'floor' | 'ceiling' }
  | { readonly kind: 'wall'; readonly wall: number }
  | { readonly kind: 'blocker'; readonly blocker: number };

/**
 * The small flat pieces that the room is cut into. Arrays of numbers, since every moved light walks over all
 * of them: patch i has its centre at centres[3i…], its inward unit normal at normals[3i…], and its corners
 * (a flat convex polygon, as x, y, z triples, right-handed about the normal in these numbers) in corners[i].
 */
export type Patches = {
  readonly count: number;
  readonly centres: Float64Array;
  readonly normals: Float64Array;
  /** [m²] */
  readonly areas: Float64Array;
  readonly reflectances: Float64Array;
  readonly surfaces: readonly Surface[];
  readonly corners: readonly Float64Array[];
};

/**
 * A room made ready: one matrix–vector product gives what every patch sends out once the light that falls
 * on it straight from a lamp is known. Depends on the room alone, not on lights or power.
 */
export type RoomExchange = {
  readonly room: RoomModel;
  readonly patches: Patches;
  /** Row-major count × count: exitance [lm·s/m²] of patch i for 1 lx·s of direct light on patch j */
  readonly response: Float64Array;
  /** Row-major count × count form factors F(i→j); rows sum to 1 */
  readonly formFactors: Float64Array;
};

/** What one lamp at full power does to the room. */
export type LampLight = {
  /** Straight from the lamp, mean over each patch [lx·s] */
  readonly direct: Float64Array;
  /** What each patch sends out, all bounces together [lm·s/m²] */
  readonly exitance: Float64Array;
  /** What falls on each patch from the other patches [lx·s] */
  readonly returned: Float64Array;
};
