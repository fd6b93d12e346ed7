import type { Spot } from '../../core/geometry/spot.ts';
import type { LengthUnit } from './length-unit.ts';

/** One line or ring of a drawing, in the drawing's own units, x to the right and y DOWN. */
export interface PlanShape {
  /** Corners in order; the first is not repeated at the end. */
  readonly outline: readonly Spot[];
  /** False for a line that ends somewhere: walls drawn piece by piece are joined later. */
  readonly closed: boolean;
  /** What the drawing calls it: its layer, or its id. Empty when it says nothing. */
  readonly name: string;
}

/** What the drawing covers, in its own units. */
export interface NativeBox {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** A drawing as shapes. */
export interface DrawnPlan {
  readonly kind: 'shapes';
  readonly shapes: readonly PlanShape[];
  /** What one unit of the drawing is; null: the drawing does not say, so a person must. */
  readonly unit: LengthUnit | null;
  readonly boxNative: NativeBox;
  /** How many things were not read: texts, splines, linked drawings, shapes without an end. */
  readonly leftOut: number;
}

/** Why a file cannot be used, in plain words, with what to do. */
export interface FileTrouble {
  readonly kind: 'trouble';
  readonly reason: string;
}

/** Longest side of a picture to trace, px: fine enough to press corners on, small enough for a phone's memory. */
export const LONGEST_PX = 2000;

/** A picture of a plan, to be traced. */
export interface PicturePlan {
  readonly kind: 'picture';
  readonly picture: HTMLCanvasElement | ImageBitmap;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** What a chosen file turned out to be. */
export type PlanFile = PicturePlan | DrawnPlan | FileTrouble;

/** @returns a trouble with this reason */
export const trouble = (reason: string): FileTrouble => ({ kind: 'trouble', reason });
