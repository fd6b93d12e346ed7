import type { Spot } from '../../geometry/spot.ts';
import type { Mark } from '../../placing/mark.ts';
import type { Exposure } from '../exposure.ts';
import type { Frame } from '../field-of-view.ts';
import type { FrameFeature } from '../frame/scene.ts';
import type { AmbientReading } from '../lamps/ambient-at.ts';
import type { LampRecipe } from '../lamps/lamp-recipe.ts';

/** One flash of the night, where it is or would be. Its mark's power is what it is set to. */
export type LightUnit = {
  /** A stand's id, or 'camera' */
  readonly id: string;
  readonly letter: string;
  readonly job: 'key' | 'back' | 'camera';
  readonly recipe: LampRecipe;
  readonly mark: Mark;
  readonly leastPowerStops: number;
  /** Full-power recycle time [s] and flashes of a fresh set; null when nobody has said */
  readonly recycleS: number | null;
  readonly flashesFull: number | null;
  /** What of it test frames narrow: its head, its umbrella or card */
  readonly unknownIds: readonly string[];
};

/** What the lead wants the picture to look like [stops from mid-grey], and how wide the group is [m]. */
export type Wish = {
  readonly subjectStops: number;
  readonly backgroundStops: number;
  readonly rimStops: number;
  readonly groupWidthM: number;
};

/** A test frame: what fired, where the stand-in stood, and how far over or under it came out. */
export type TakenFrame = {
  readonly id: string;
  readonly units: readonly LightUnit[];
  readonly subject: { readonly spot: Spot; readonly eyeM: number; readonly facingDeg: number };
  readonly camera: { readonly spot: Spot; readonly heightM: number };
  readonly exposure: Exposure;
  readonly ambientEv100: number | null;
  readonly source: 'seen' | 'meter' | 'picture';
  readonly what: 'subject' | 'background' | 'rim';
  readonly stops: number;
};

/** Everything besides the room that the light of one moment follows from. */
export type LightInput = {
  readonly units: readonly LightUnit[];
  readonly features: readonly FrameFeature[];
  readonly subject: { readonly spot: Spot; readonly eyeM: number; readonly facingDeg: number };
  readonly camera: { readonly spot: Spot; readonly heightM: number };
  readonly frame: Frame;
  readonly exposure: Exposure;
  /** Readings of the ambient at spots, and one for everywhere else; null when nobody measured */
  readonly ambientSpots: readonly AmbientReading[];
  readonly ambientEv100: number | null;
  readonly wish: Wish;
  /** The test frames that count */
  readonly taken: readonly TakenFrame[];
  /** How densely people stand between light and face [1/m²] */
  readonly crowdPerM2: number;
  /** A light is being dragged: what nobody reads meanwhile is left out */
  readonly isMoving: boolean;
};
