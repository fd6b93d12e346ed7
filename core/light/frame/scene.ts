import type { Spot } from '../../geometry/spot.ts';
import type { Frame } from '../field-of-view.ts';
import type { RoomModel } from '../room/room-model.ts';

/** Is a thing wanted behind the couple, or is it to stay out of the picture? */
export type Background = 'wanted' | 'unwanted' | 'neither';

/**
 * A thing in the room as the camera sees it: a solid from the floor to its height.
 * - heightM: 0 for something drawn on the floor; it then counts as floor
 * - blocksLight: true hides a light behind it; such a thing is also a blocker of the room, under the same id
 * - reflectance: diffuse, of its sides and its top [1], 0 to below 1
 */
export type FrameFeature = {
  readonly id: string;
  readonly name: string;
  readonly outline: readonly Spot[];
  readonly heightM: number;
  readonly background: Background;
  readonly blocksLight: boolean;
  readonly reflectance: number;
};

/** A stand that may be in the picture: heightM is that of the lamp; umbrellaRadiusM null for a bare head. */
export type FrameStand = {
  readonly id: string;
  readonly letter: string;
  readonly spot: Spot;
  readonly heightM: number;
  readonly umbrellaRadiusM: number | null;
};

/**
 * Everything that decides what the camera sees, light apart. The camera is held level and aims at the
 * subject's eyes; facingDeg is the bearing the subject looks along [°].
 */
export type FrameScene = {
  readonly room: RoomModel;
  readonly features: readonly FrameFeature[];
  readonly camera: { readonly spot: Spot; readonly heightM: number };
  readonly subject: { readonly spot: Spot; readonly eyeM: number; readonly facingDeg: number };
  readonly frame: Frame;
  readonly stands: readonly FrameStand[];
};

/** Why there is no picture, in plain words. */
export type CannotFrame = { readonly kind: 'cannot'; readonly reason: string };
